//go:build cgo

package main

import (
	"context"
	"errors"
	"fmt"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"pressworth/catalog/store"
	"pressworth/ui"
)

// trouble is why the large window does not open, and what can be done about it.
type trouble struct {
	text string
	word string       // on the button that does it; empty: nothing can be done here
	act  func() error // nil error: the program goes on in a process of its own
}

// troubleOf says what an error at opening means for the one who started the program. Looking for a backup reads each
// one until a sound one is found.
func troubleOf(err error, path string, log *journal) trouble {
	ctx := context.Background()
	switch {
	case errors.Is(err, store.ErrLocked):
		return trouble{
			"This shop is open in another window.\n\nClose that one to work here, or open the shop here to look only: nothing can be saved then.",
			"Open to look only", func() error { return openAgain(path, true) },
		}
	case errors.Is(err, store.ErrDamaged), errors.Is(err, store.ErrNotShop):
		return damageOf(ctx, err, path, log)
	}
	return trouble{text: "Pressworth cannot open the shop.\n\n" + err.Error() + "\n\nNothing in the file was changed."}
}

// damageOf offers the newest sound backup.
func damageOf(ctx context.Context, err error, path string, log *journal) trouble {
	text := "The shop file is damaged, or is none:\n" + path + "\n" + err.Error() + "\n\nNothing in it was changed. "
	r, none := store.FindRescue(ctx, path, backupFolder(path))
	if none != nil {
		return trouble{text: text + "There is no sound backup in " + backupFolder(path) +
			": look for a copy on another disk, and put it in place with `pressworth restore FILE --shop " + path + "`."}
	}
	return trouble{
		text + fmt.Sprintf("The newest sound backup is of %s. %s The file as it is now is kept beside it.", r.Backup.Taken.Format("Monday 2 January 2006, 15:04"), missing(r)),
		"Put the backup in its place", func() error { return restoreAndOpen(ctx, r.Backup.Path, path, log) },
	}
}

// missing says what a backup does not have.
func missing(r store.Rescue) string {
	switch r.Quotes {
	case -1:
		return fmt.Sprintf("What was saved after it would be missing; the damaged file was last written %s.", r.Written.Format(time.DateTime))
	case 0:
		return "As far as the damaged file can be read, no quote was changed after it."
	case 1:
		return "One quote that was changed after it would be missing."
	}
	return fmt.Sprintf("%d quotes that were changed after it would be missing.", r.Quotes)
}

// showTrouble says in a small window why the large one does not open: who started the program from a menu sees no
// standard error.
func (d *desktop) showTrouble(x trouble) {
	w := d.app.NewWindow(ui.Name)
	w.SetMaster() // the large window is not shown: closing this one ends the program
	text := widget.NewLabel(x.text)
	text.Wrapping = fyne.TextWrapWord
	closing := widget.NewButton("Close", w.Close)
	buttons := container.NewHBox(closing, widget.NewButton("Copy details", func() { d.app.Clipboard().SetContent(d.log.details()) }))
	first := closing
	if x.word != "" {
		first = widget.NewButton(x.word, func() {
			if err := x.act(); err != nil {
				text.SetText(x.text + "\n\nThat did not work: " + err.Error())
				return
			}
			w.Close()
		})
		buttons.Objects = append([]fyne.CanvasObject{first}, buttons.Objects...)
	}
	w.SetContent(container.NewPadded(container.NewBorder(nil, buttons, nil, nil, text)))
	w.Resize(fyne.NewSize(620, 320))
	w.Show()
	w.Canvas().Focus(first)
	d.trace("trouble: " + x.word)
	d.app.Run()
}
