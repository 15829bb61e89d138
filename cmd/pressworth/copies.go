//go:build cgo

package main

import (
	"context"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"time"

	"pressworth/catalog/store"
	"pressworth/ui"
)

// copies are the backups of an open shop file, as the window asks for them.
type copies struct {
	shop *store.Store
	log  *journal
}

// backupFolder is where the backups of a shop file lie.
func backupFolder(shop string) string { return filepath.Join(filepath.Dir(shop), "backups") }

// List lists the backups, the newest first.
func (c copies) List() ([]ui.Backup, error) {
	all, err := store.Backups(backupFolder(c.shop.Path()))
	if err != nil {
		return nil, err
	}
	var out []ui.Backup
	for _, b := range all {
		info, err := os.Stat(b.Path)
		if err != nil {
			continue // removed meanwhile
		}
		out = append(out, ui.Backup{Path: b.Path, Taken: b.Taken, Bytes: info.Size()})
	}
	return out, nil
}

// Make makes a backup now.
func (c copies) Make() (path, altered string, err error) {
	b, err := c.shop.Backup(context.Background(), backupFolder(c.shop.Path()))
	c.log.trouble("backup", err)
	return b.Path, b.Altered, err
}

// Restore closes the shop, puts a backup in its place and starts the program anew on it. A backup that is not sound is
// refused before the shop is closed.
func (c copies) Restore(path string) error {
	ctx := context.Background()
	found, err := store.Check(ctx, path)
	if err == nil && found.Problems != nil {
		err = fmt.Errorf("%w: %s", store.ErrDamaged, found.Problems[0])
	}
	if err != nil {
		c.log.trouble("restore", err)
		return err
	}
	if err := c.shop.Close(); err != nil {
		return err
	}
	return restoreAndOpen(ctx, path, c.shop.Path(), c.log)
}

// restoreAndOpen puts a backup in the place of a closed shop file and starts the program on it. Where that does not
// work the program starts on the file as it was.
func restoreAndOpen(ctx context.Context, backup, shop string, log *journal) error {
	kept, err := store.Restore(ctx, backup, shop, time.Now())
	log.trouble("restore", err)
	if err == nil && kept != "" {
		log.note("restored, the former file is kept")
	}
	return errors.Join(err, openAgain(shop, false))
}
