package main

import (
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"

	"pressworth/catalog"
)

// readLogo reads a picture for the letterhead, no more of it than one may have.
func readLogo(path string) (l catalog.Logo, err error) {
	file, err := os.Open(path)
	if err != nil {
		return l, err
	}
	defer func() { err = errors.Join(err, file.Close()) }()
	data, err := io.ReadAll(io.LimitReader(file, catalog.MostLogoBytes+1))
	if err != nil {
		return l, fmt.Errorf("%s: %w", path, err)
	}
	l = catalog.Logo{Name: filepath.Base(path), Data: data}
	return l, l.Check()
}
