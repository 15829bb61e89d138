package main

import (
	"errors"
	"os"
	"path/filepath"
	"runtime"
)

// dataFolder is where the program keeps its files: the system's folder for a user's data, and pressworth in it.
func dataFolder() (string, error) {
	if d := os.Getenv("XDG_DATA_HOME"); filepath.IsAbs(d) { // the XDG base directories: a relative one is to be ignored
		return filepath.Join(d, "pressworth"), nil
	}
	if d := os.Getenv("LOCALAPPDATA"); runtime.GOOS == "windows" && d != "" {
		return filepath.Join(d, "pressworth"), nil
	}
	home, err := os.UserHomeDir()
	if err != nil {
		return "", errors.New("no home folder is set: name a shop file with --shop")
	}
	if runtime.GOOS == "darwin" {
		return filepath.Join(home, "Library", "Application Support", "pressworth"), nil
	}
	return filepath.Join(home, ".local", "share", "pressworth"), nil
}

// chooseShop is the shop file to open: the one that is named; else the demo where it is asked for, or where there is no
// shop of one's own yet.
func chooseShop(named string, demo bool) (path string, asDemo bool, err error) {
	if named != "" {
		path, err = filepath.Abs(named)
		return path, demo, err
	}
	folder, err := dataFolder()
	if err != nil {
		return "", false, err
	}
	own := filepath.Join(folder, "shop.db")
	if _, err := os.Stat(own); !demo && err == nil {
		return own, false, nil
	}
	return filepath.Join(folder, "demo.db"), true, nil
}
