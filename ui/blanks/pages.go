package blanks

// openImport shows the import page in place of the list.
func (p *Place) openImport() {
	if p.page == nil {
		p.page = newImportPage(p, p.Imports)
		p.stack.Add(p.page.object)
	}
	p.list.Hide()
	p.page.object.Show()
	p.page.begin()
}

// closeImport goes back to the list, which may have changed.
func (p *Place) closeImport() {
	if p.page == nil || !p.page.object.Visible() {
		return
	}
	p.page.turn++
	if p.page.stop != nil {
		p.page.stop()
	}
	p.page.object.Hide()
	p.list.Show()
	p.Shown()
	p.Focus()
}

// Escape goes back from the page over the list; false where it is not open.
func (p *Place) Escape() bool {
	if p.bulk != nil && p.bulk.object.Visible() {
		p.bulk.close()
		return true
	}
	if p.houses != nil && p.houses.object.Visible() {
		p.closeSuppliers()
		return true
	}
	if p.editor != nil && p.editor.object.Visible() {
		p.closeStyle()
		return true
	}
	if p.page == nil || !p.page.object.Visible() {
		return false
	}
	p.closeImport()
	return true
}

func (p *Place) say(text string) {
	p.notice.SetText(text)
	p.notice.Offer("Dismiss", func() { p.notice.SetText("") })
}

// openBulk shows the page that changes the prices of everything in the list.
func (p *Place) openBulk() {
	if p.bulk == nil {
		p.bulk = newBulkPage(p)
		p.stack.Add(p.bulk.object)
	}
	p.bulk.open()
}
