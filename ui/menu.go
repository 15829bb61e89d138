package ui

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"

	"pressworth/ui/look"
)

// Every shortcut that works wherever the focus is stands in the menu: the toolkit delivers only those while a field has
// the focus.

func ctrl(key fyne.KeyName) fyne.Shortcut {
	return &desktop.CustomShortcut{KeyName: key, Modifier: fyne.KeyModifierShortcutDefault}
}

func ctrlShift(key fyne.KeyName) fyne.Shortcut {
	return &desktop.CustomShortcut{KeyName: key, Modifier: fyne.KeyModifierShortcutDefault | fyne.KeyModifierShift}
}

func item(word string, shortcut fyne.Shortcut, act func()) *fyne.MenuItem {
	i := fyne.NewMenuItem(word, act)
	i.Shortcut = shortcut
	return i
}

func (w *Window) menu() *fyne.MainMenu {
	return fyne.NewMainMenu(w.fileMenu(), w.editMenu(), w.quoteMenu(), w.viewMenu(), w.helpMenu())
}

func (w *Window) fileMenu() *fyne.Menu {
	quit := item("Quit", ctrl(fyne.KeyQ), w.Close)
	quit.IsQuit = true
	return fyne.NewMenu("File",
		item("New quote", ctrl(fyne.KeyN), w.NewQuote),
		item("Save", ctrl(fyne.KeyS), w.saveNow),
		fyne.NewMenuItemSeparator(),
		item("Quote PDF", ctrl(fyne.KeyP), func() { w.Write(QuotePaper) }),
		item("Cost sheet", ctrlShift(fyne.KeyP), func() { w.Write(CostPaper) }),
		item("E-mail", ctrl(fyne.KeyE), func() { w.Write(EmailPaper) }),
		item("Copy as text", nil, w.CopyText),
		fyne.NewMenuItemSeparator(),
		item("Backups", nil, w.BackupsPage),
		fyne.NewMenuItemSeparator(),
		quit,
	)
}

func (w *Window) editMenu() *fyne.Menu {
	return fyne.NewMenu("Edit",
		item("Undo", &fyne.ShortcutUndo{}, w.Undo),
		item("Redo", &fyne.ShortcutRedo{}, w.Redo),
	)
}

func (w *Window) quoteMenu() *fyne.Menu {
	return fyne.NewMenu("Quote",
		item("To the customer", ctrl(fyne.KeyT), w.TurnToCustomer),
		fyne.NewMenuItemSeparator(),
		item("Proof", nil, func() { w.Write(ProofPaper) }),
		item("Press ticket", nil, func() { w.Write(TicketPaper) }),
		item("Purchase list", nil, func() { w.Write(BuyPaper) }),
		item("Sheet layouts", nil, func() { w.Write(LayoutPaper) }),
		item("Packing list", nil, func() { w.Write(PackingPaper) }),
		item("Bag list", nil, func() { w.Write(BagPaper) }),
		item("Labels", nil, func() { w.Write(LabelPaper) }),
		item("Order confirmation", nil, func() { w.Write(ConfirmPaper) }),
		item("Invoice", nil, func() { w.Write(InvoicePaper) }),
	)
}

func (w *Window) viewMenu() *fyne.Menu {
	keys := [placeCount]fyne.KeyName{fyne.Key1, fyne.Key2, fyne.Key3, fyne.Key4, fyne.Key5}
	m := fyne.NewMenu("View")
	for i, name := range placeNames {
		m.Items = append(m.Items, item(name, ctrl(keys[i]), func() { w.Go(i + 1) }))
	}
	mode := func(word string, mode look.Mode) *fyne.MenuItem {
		i := item(word, nil, func() { w.SetMode(mode) })
		i.Checked = w.deps.Settings.Mode == mode
		return i
	}
	m.Items = append(m.Items,
		fyne.NewMenuItemSeparator(),
		mode("Light", look.Light), mode("Dark", look.Dark), mode("As the system", look.AsSystem),
		fyne.NewMenuItemSeparator(),
		item("Larger text", ctrl(fyne.KeyEqual), func() { w.SetTextSize(w.deps.Settings.Percent + 10) }),
		item("Smaller text", ctrl(fyne.KeyMinus), func() { w.SetTextSize(w.deps.Settings.Percent - 10) }),
		item("Usual text size", ctrl(fyne.Key0), func() { w.SetTextSize(100) }),
	)
	return m
}

func (w *Window) helpMenu() *fyne.Menu {
	return fyne.NewMenu("Help",
		item("This place    F1", nil, w.Help),
		item("Keys", nil, w.Keys),
		item("Cautions", nil, w.Cautions),
		fyne.NewMenuItemSeparator(),
		item("Copy details", nil, w.CopyDetails),
		item("About", nil, w.AboutPage),
	)
}

// key serves the keys that no part has used.
func (w *Window) key(e *fyne.KeyEvent) {
	switch e.Name {
	case fyne.KeyF1:
		if !w.customer {
			w.Help()
		}
	case fyne.KeyF2:
		w.Turn()
	case fyne.KeyEscape:
		if w.chooser != nil {
			w.chooser.Hide()
		} else if w.page != nil {
			w.closePage()
			w.Focus()
		} else if e, ok := w.places[w.at].(Escaper); ok && !w.customer {
			e.Escape()
		}
	}
}

// addShortcuts serves the one shortcut that is left while the menu is closed: the way back from the customer's side.
func (w *Window) addShortcuts() {
	w.win.Canvas().AddShortcut(ctrl(fyne.KeyT), func(fyne.Shortcut) { w.Turn() })
}

// SetMode changes between light and dark.
func (w *Window) SetMode(m look.Mode) {
	w.deps.Settings.Mode = m
	w.applySettings()
}

// SetTextSize changes the size of text, in percent.
func (w *Window) SetTextSize(percent int) {
	w.deps.Settings.Percent = min(max(percent, look.MinPercent), look.MaxPercent)
	w.applySettings()
}

func (w *Window) applySettings() {
	w.deps.Theme(look.NewTheme(w.deps.Settings.Mode, w.deps.Settings.Percent))
	w.win.SetMainMenu(w.menu())
	if w.deps.Keep != nil {
		w.deps.Keep(w.deps.Settings)
	}
}

// NewQuote clears the counter and goes to it; what was there has been saved, and can be brought back with undo.
func (w *Window) NewQuote() {
	w.save()
	w.deps.Presenter.Clear()
	w.Go(1)
}

// Undo takes back the last step of the place that is shown.
func (w *Window) Undo() {
	if w.at == counterPlace {
		w.deps.Presenter.Undo()
	} else if u, ok := w.places[w.at].(Undoer); ok {
		u.Undo()
	}
}

// Redo does it again.
func (w *Window) Redo() {
	if w.at == counterPlace {
		w.deps.Presenter.Redo()
	} else if u, ok := w.places[w.at].(Undoer); ok {
		u.Redo()
	}
}
