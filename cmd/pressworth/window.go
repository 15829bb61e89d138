//go:build cgo

package main

import (
	"context"
	"errors"
	"flag"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
)

// openWindow opens the window on a shop file and stays until it is closed.
func openWindow(s shell) (err error) {
	flags := flag.NewFlagSet("pressworth", flag.ContinueOnError)
	named := flags.String("shop", "", "")
	demo := flags.Bool("demo", false, "")
	if _, err := s.parse(flags); err != nil {
		return err
	}
	path, asDemo, err := chooseShop(*named, *demo)
	if err != nil {
		return err
	}
	if !hasDisplay() {
		return errors.New("no display to open a window on; `pressworth help` lists the commands that need none")
	}
	ctx := context.Background()
	shop, err := openShop(ctx, path, asDemo)
	if err != nil {
		showTrouble(err)
		return err
	}
	defer func() { err = errors.Join(err, shop.Close()) }()
	d, err := newDesktop(ctx, shop, s)
	if err != nil {
		return err
	}
	d.show()
	return nil
}

func hasDisplay() bool {
	return runtime.GOOS == "windows" || runtime.GOOS == "darwin" || os.Getenv("DISPLAY") != "" || os.Getenv("WAYLAND_DISPLAY") != ""
}

// startOwn opens a second window on a shop of one's own, which is made there if there is none yet.
func startOwn() error {
	folder, err := dataFolder()
	if err != nil {
		return err
	}
	self, err := os.Executable()
	if err != nil {
		return err
	}
	return exec.Command(self, "--shop", filepath.Join(folder, "shop.db")).Start()
}
