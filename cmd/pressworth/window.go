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

	"pressworth/catalog"
	"pressworth/catalog/store"
	"pressworth/quote"
	"pressworth/ui/parts"
)

// openWindow opens the window on a shop file and stays until it is closed.
func openWindow(s shell) (err error) {
	flags := flag.NewFlagSet("pressworth", flag.ContinueOnError)
	named := flags.String("shop", "", "")
	demo := flags.Bool("demo", false, "")
	lookOnly := flags.Bool("look-only", false, "")
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
	if *lookOnly {
		parts.LookOnly()
	}
	opening := openBehind(path, asDemo, *lookOnly)
	d := newDesktop(s)
	d.lookOnly = *lookOnly
	o := <-opening
	d.log.trouble("open", o.err)
	if o.err != nil {
		d.showTrouble(troubleOf(o.err, path, d.log))
		return o.err
	}
	defer func() { err = errors.Join(err, o.shop.Close()) }()
	d.show(o)
	return nil
}

// opened is a shop file with what the window needs of it first.
type opened struct {
	shop    *store.Store
	records catalog.Shop
	first   catalog.Draft
	sample  func(catalog.Shop) (quote.Result, error)
	err     error // the shop is closed
}

// openBehind opens the shop file while the toolkit makes a window.
func openBehind(path string, demo, lookOnly bool) <-chan opened {
	done := make(chan opened, 1)
	go func() { done <- open(context.Background(), path, demo, lookOnly) }()
	return done
}

func open(ctx context.Context, path string, demo, lookOnly bool) (o opened) {
	if lookOnly {
		o.shop, o.err = store.Open(ctx, path, store.Options{ReadOnly: true})
	} else {
		o.shop, o.err = openShop(ctx, path, demo)
	}
	if o.err != nil {
		return o
	}
	if o.records, o.err = o.shop.Shop(ctx); o.err == nil {
		o.first = firstQuote(ctx, o.shop, o.records)
		o.sample, o.err = sampler(quote.NewMemory().First)
	}
	if o.err != nil {
		o.err = errors.Join(o.err, o.shop.Close())
	}
	return o
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
