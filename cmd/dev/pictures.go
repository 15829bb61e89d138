package main

import (
	"os"
	"path/filepath"
)

// places are the places of the window and the customer's side, with what to press to get there.
var places = []struct {
	name string
	keys []string
}{
	{"counter", []string{"ctrl+1"}},
	{"quote-book", []string{"ctrl+2"}},
	{"blanks", []string{"ctrl+3"}},
	{"rate-cards", []string{"ctrl+4"}},
	{"shop", []string{"ctrl+5"}},
	{"customer", []string{"ctrl+1", "ctrl+t"}},
}

// pictures draws the README's pictures: every place of the demo shop in both themes, and the first page of its quote.
func pictures(t *task) error {
	if err := t.install(buildPackages, runPackages, offscreenPackages, testPackages); err != nil {
		return err
	}
	if err := t.goBuild(); err != nil {
		return err
	}
	dir := filepath.Join(t.root, "assets", "pictures")
	if err := os.MkdirAll(dir, 0o755); err != nil {
		return err
	}
	for _, theme := range []struct {
		name string
		dark bool
	}{{"light", false}, {"dark", true}} {
		if err := t.placesIn(theme.name, view{1400, 900, theme.dark}, dir); err != nil {
			return err
		}
	}
	return t.paperPicture(dir)
}

func (t *task) placesIn(theme string, v view, dir string) error {
	s, err := t.open(v, "--demo")
	if err != nil {
		return err
	}
	defer s.close()
	if _, err := s.program.Wait("pressworth: at rest", patience); err != nil { // the charts that wait for a pause are there
		return err
	}
	for _, p := range places {
		if err := s.keys(p.keys...); err != nil {
			return err
		}
		if err := s.settled(filepath.Join(dir, p.name+"-"+theme+".png")); err != nil {
			return err
		}
	}
	return nil
}

// paperPicture prints the demo quote and draws its first page.
func (t *task) paperPicture(dir string) error {
	s, err := t.open(view{width: 1400, height: 900}, "--demo")
	if err != nil {
		return err
	}
	defer s.close()
	if err := s.keys("ctrl+p"); err != nil {
		return err
	}
	file, err := s.program.Wait("pressworth: wrote", patience)
	if err != nil {
		return err
	}
	return t.quietly("draw the quote", t.command("pdftoppm", "-png", "-r", "80", "-f", "1", "-singlefile", file, filepath.Join(dir, "quote")))
}
