package ui

import (
	"fmt"
	"time"

	"fyne.io/fyne/v2"

	"pressworth/ui/parts"
)

// mostBackups is how many backups the page lists; the rule keeps fewer.
const mostBackups = 40

// backupText says what becomes of backups.
const backupText = "A copy of the shop file is made at the first start of a day and checked. The newest of each of 7 days, 8 weeks and 12 months is kept. " +
	"They lie on this computer: copy one to another disk now and then."

// BackupsPage lists the backups, makes one, and puts one in the place of the shop file.
func (w *Window) BackupsPage() {
	if w.deps.Backups == nil {
		w.say(parts.Warning, "This window keeps no backups.")
		return
	}
	parts.Background(func() func() {
		all, err := w.deps.Backups.List()
		return func() {
			if err != nil {
				w.say(parts.Fault, "The backups could not be listed: "+err.Error())
				return
			}
			w.open("Backups", w.backupRows(all)...)
			w.trace("backups")
		}
	})
}

func (w *Window) backupRows(all []Backup) []fyne.CanvasObject {
	objects := prose(backupText)
	if len(all) == 0 {
		objects = append(objects, parts.NewText("There is none yet.", parts.MutedStyle))
	}
	list := parts.Column(4)
	for _, b := range all[:min(len(all), mostBackups)] {
		list.Add(w.backupRow(b))
	}
	make := parts.NewDeed(parts.Filled, "Back up now", "", w.backUpNow)
	return append(objects, list, parts.Row(8, nil, make))
}

// backupRow offers one backup. Restoring asks once more, on the same button.
func (w *Window) backupRow(b Backup) fyne.CanvasObject {
	var button *parts.Button
	asked := false
	button = parts.NewSmallDeed(parts.Quiet, "Restore", func() {
		if !asked {
			asked = true
			button.SetText("Put it in place of the shop")
			return
		}
		button.Disable()
		w.restore(b)
	})
	return parts.Row(12, []parts.Track{parts.Share(1), parts.Fit(), parts.Fit()},
		parts.NewText(b.Taken.Format("Mon 2 Jan 2006, 15:04"), parts.Style{}),
		parts.NewText(fmt.Sprintf("%.1f MB", float64(b.Bytes)/1e6), parts.MutedStyle.Right()), button)
}

func (w *Window) backUpNow() {
	if !w.save() {
		return
	}
	parts.Background(func() func() {
		path, altered, err := w.deps.Backups.Make()
		return func() {
			if err != nil {
				w.say(parts.Fault, "No backup was made, the shop is as it was: "+err.Error())
				return
			}
			w.trace("backed up to " + path)
			w.BackupsPage()
			if altered != "" {
				w.say(parts.Warning, "Backed up: "+path+". But "+altered+".")
				return
			}
			w.say(parts.Note, "Backed up and checked: "+path)
		}
	})
}

func (w *Window) restore(b Backup) {
	if !w.save() {
		return
	}
	w.say(parts.Note, "Putting back the backup of "+b.Taken.Format(time.DateTime)+" …")
	parts.Background(func() func() {
		err := w.deps.Backups.Restore(b.Path)
		return func() {
			if err != nil {
				w.say(parts.Fault, "Not restored, the shop is as it was: "+err.Error())
				return
			}
			w.win.SetCloseIntercept(nil) // all was saved, and the file is another one now
			w.win.Close()
		}
	})
}
