package main

import (
	"flag"
	"fmt"
	"runtime/debug"

	"pressworth/catalog/store"
	"pressworth/quote"
)

// version is the program's; FyneApp.toml has the same.
const version = "0.1.0"

// printVersion prints the numbers that a report of trouble should name.
func printVersion(s shell) error {
	if _, err := s.parse(flag.NewFlagSet("version", flag.ContinueOnError)); err != nil {
		return err
	}
	return s.print(struct {
		Version string `json:"version"`
		Toolkit string `json:"toolkit"`
		Go      string `json:"go"`
		Schema  int    `json:"schema"`
		Job     string `json:"job"`
		Result  string `json:"result"`
	}{version, toolkit(), goVersion(), store.Version(), quote.JobFormat, quote.ResultFormat})
}

func goVersion() string {
	if info, ok := debug.ReadBuildInfo(); ok {
		return info.GoVersion
	}
	return ""
}

// toolkit is the version of the window's toolkit that is linked in.
func toolkit() string {
	const path = "fyne.io/fyne/v2"
	if info, ok := debug.ReadBuildInfo(); ok {
		for _, m := range info.Deps {
			if m.Path == path {
				return path + " " + m.Version
			}
		}
	}
	return "none: built without a window"
}

// help lists the commands.
func help(s shell) error {
	text := "pressworth [--shop FILE.db] [--demo]\n    opens the window\n"
	for _, c := range commands() {
		text += fmt.Sprintf("pressworth %s %s\n    %s\n", c.name, c.args, c.what)
	}
	text += "A file named - is standard input. Results are JSON; the exit code is 0, 2 for bad input, 1 for anything else.\n"
	_, err := fmt.Fprint(s.out, text)
	return err
}
