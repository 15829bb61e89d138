// Package partstest reads a window back, for the tests of places and of the program.
//
// Not in this package: a place's own words, and what is clicked.
package partstest

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/test"

	"pressworth/ui/parts"
)

// Walk visits what is to be seen of a tree of objects, each before what it is made of.
func Walk(o fyne.CanvasObject, visit func(fyne.CanvasObject)) {
	if o == nil || !o.Visible() {
		return
	}
	visit(o)
	switch o := o.(type) {
	case *fyne.Container:
		for _, child := range o.Objects {
			Walk(child, visit)
		}
	case fyne.Widget:
		for _, child := range test.WidgetRenderer(o).Objects() {
			Walk(child, visit)
		}
	}
}

// Texts are the lines of text that are drawn, as they are come upon.
func Texts(o fyne.CanvasObject) (all []string) {
	Walk(o, func(o fyne.CanvasObject) {
		if line, ok := o.(*canvas.Text); ok && line.Text != "" {
			all = append(all, line.Text)
		}
	})
	return all
}

// Pressables are the things to press that are called so, as they are come upon.
func Pressables(o fyne.CanvasObject, word string) (all []fyne.Tappable) {
	Walk(o, func(o fyne.CanvasObject) {
		if b, ok := o.(interface{ Text() string }); ok && b.Text() == word {
			if t, ok := o.(fyne.Tappable); ok {
				all = append(all, t)
			}
		}
	})
	return all
}

// Field is the first field after a caption, or with a hint; nil where there is none.
func Field(o fyne.CanvasObject, name string) (found *parts.Field) {
	after := false
	Walk(o, func(o fyne.CanvasObject) {
		if t, ok := o.(*parts.Text); ok && t.Text() == name {
			after = true
		}
		if f, ok := o.(*parts.Field); ok && found == nil && (after || f.Hint == name) {
			found = f
		}
	})
	return found
}
