//go:build cgo

package main

import (
	"context"
	"errors"
	"time"

	"pressworth/catalog/store"
	"pressworth/ui/parts"
)

// backupDaily makes the day's backup off the window's goroutine if there is none yet, and looks again in an hour: a
// window may stay open for days.
func (d *desktop) backupDaily() {
	if d.lookOnly {
		return // the other window makes it
	}
	parts.Background(func() func() {
		made, err := d.shop.BackupDaily(context.Background(), backupFolder(d.shop.Path()))
		d.log.trouble("daily backup", err)
		return func() {
			switch {
			case errors.Is(err, store.ErrDamaged):
				d.window.Warn("The shop file is damaged, and no backup was made of it: " + err.Error() + ". Under File, Backups puts the last sound one in its place.")
				return
			case err != nil:
				d.window.Warn("Today's backup could not be made, the shop is as it was: " + err.Error())
				return
			case made.Altered != "":
				d.window.Warn("Today's backup is made. But " + made.Altered + ".")
			}
			d.trace("backed up")
			parts.Background(func() func() {
				<-time.After(time.Hour)
				return d.backupDaily
			})
		}
	})
}
