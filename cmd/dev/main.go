// Command dev sets a machine up for the program, starts it, tests it and packs it: the commands of the README.
//
//	go run ./cmd/dev start
//
// It needs Go and git and nothing else; what more a command needs it installs, or says what to install. It stands apart
// from the product: it imports the standard library, and what drives a window on a screen of its own.
package main

import (
	"context"
	"errors"
	"fmt"
	"os"
	"os/signal"
	"path/filepath"
)

type command struct {
	name string
	what string
	run  func(*task) error
}

func commands() []command {
	return []command{
		{"start", "set up, build, and open the window on the demo shop", start},
		{"test", "set up, and run everything that is checked before a change goes in", test},
		{"build", "build the program into out/", build},
		{"run", "build, and run the program with the arguments that follow", run},
		{"bench", "run the benchmarks", bench},
		{"package", "build the archive for Linux into out/", pack},
		{"notices", "write assets/NOTICES from the licences of what is linked in", notices},
		{"pictures", "draw the pictures of the README anew, from the real window", pictures},
		{"long", "the long forms of the tests: fuzzing, kills, benchmarks", long},
	}
}

func main() {
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt)
	err := dispatch(ctx, os.Args[1:])
	stop()
	if err != nil {
		fmt.Fprintln(os.Stderr, "\ndev:", err)
		os.Exit(1)
	}
}

func dispatch(ctx context.Context, args []string) error {
	if len(args) > 0 {
		for _, c := range commands() {
			if c.name == args[0] {
				t, err := newTask(ctx, args[1:])
				if err != nil {
					return err
				}
				return c.run(t)
			}
		}
	}
	fmt.Println("go run ./cmd/dev COMMAND")
	for _, c := range commands() {
		fmt.Printf("  %-9s %s\n", c.name, c.what)
	}
	if len(args) == 0 {
		return nil
	}
	return fmt.Errorf("no command %q", args[0])
}

// projectRoot is the folder of go.mod, at or above the working folder.
func projectRoot() (string, error) {
	dir, err := os.Getwd()
	if err != nil {
		return "", err
	}
	for {
		if _, err := os.Stat(filepath.Join(dir, "go.mod")); err == nil {
			return dir, nil
		}
		up := filepath.Dir(dir)
		if up == dir {
			return "", errors.New("run this inside the project's folder")
		}
		dir = up
	}
}
