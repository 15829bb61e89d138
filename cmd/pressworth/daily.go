//go:build cgo

package main

import (
	"context"
	"path/filepath"
	"time"

	"pressworth/ui/parts"
)

// backupDaily makes the day's backup off the window's goroutine if there is none yet, and looks again in an hour: a
// window may stay open for days.
func (d *desktop) backupDaily() {
	parts.Background(func() func() {
		err := d.shop.BackupDaily(context.Background(), filepath.Join(filepath.Dir(d.shop.Path()), "backups"))
		return func() {
			if err != nil {
				d.window.Warn("Today's backup could not be made: " + err.Error())
				return
			}
			d.trace("backed up")
			parts.Background(func() func() {
				<-time.After(time.Hour)
				return d.backupDaily
			})
		}
	})
}
