// Package main is a placeholder until the first slice stands.
package main

import (
	"fyne.io/fyne/v2/app"
	_ "fyne.io/fyne/v2/test"
	_ "fyne.io/fyne/v2/widget"
	_ "github.com/jung-kurt/gofpdf"
	_ "github.com/shopspring/decimal"
	_ "modernc.org/sqlite"
	_ "pgregory.net/rapid"
	_ "github.com/xuri/excelize/v2"
	_ "github.com/pdfcpu/pdfcpu/pkg/api"
	_ "golang.org/x/crypto/argon2"
	_ "github.com/rogpeppe/go-internal/testscript"
)

func main() { _ = app.New }
