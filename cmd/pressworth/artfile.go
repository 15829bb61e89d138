package main

import (
	"errors"
	"io"
	"os"

	"pressworth/ui/present/artwork"
)

// readArtwork reads a picture up to the size that is looked at; what is no plain file is not opened.
func readArtwork(path string) ([]byte, error) {
	if info, err := os.Stat(path); err != nil || !info.Mode().IsRegular() {
		return nil, errors.Join(err, errors.New("this is no picture file"))
	}
	f, err := os.Open(path)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	return io.ReadAll(io.LimitReader(f, artwork.MostBytes+1))
}
