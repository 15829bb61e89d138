package pricefile

import (
	"io"
	"strings"

	"github.com/xuri/excelize/v2"
)

// Bounds of an unpacked workbook, in bytes: a small file can hold a huge one.
const (
	maxUnpacked  = 1 << 30
	maxInMemory  = 16 << 20 // larger parts are unpacked to a temporary file
	emptyRowsEnd = 10_000   // so many empty rows in a row end a sheet
)

// workbook reads the rows of the first sheet that has any.
type workbook struct {
	file *excelize.File
	rows *excelize.Rows
	line int
}

func openXLSX(r io.Reader) (src source, err error) {
	defer func() {
		if p := recover(); p != nil { // a damaged workbook must not end the program
			src, err = nil, &Error{Problem: "the workbook is damaged"}
		}
	}()
	f, err := excelize.OpenReader(r, excelize.Options{UnzipSizeLimit: maxUnpacked, UnzipXMLSizeLimit: maxInMemory})
	if err != nil {
		return nil, &Error{Problem: "the workbook cannot be read", Err: err}
	}
	for _, sheet := range f.GetSheetList() {
		if visible, err := f.GetSheetVisible(sheet); err != nil || !visible {
			continue
		}
		rows, err := f.Rows(sheet)
		if err != nil {
			return nil, &Error{Problem: "sheet " + sheet, Err: err}
		}
		if rows.Next() {
			return &workbook{file: f, rows: first(f, sheet, rows)}, nil
		}
		if err := rows.Close(); err != nil {
			return nil, &Error{Problem: "sheet " + sheet, Err: err}
		}
	}
	return nil, &Error{Problem: "the workbook has no rows"}
}

// first starts the sheet's rows anew: looking whether there are any has used up one.
func first(f *excelize.File, sheet string, used *excelize.Rows) *excelize.Rows {
	_ = used.Close()
	rows, _ := f.Rows(sheet) // worked a moment ago
	return rows
}

func (w *workbook) next() (r record, err error) {
	defer func() {
		if p := recover(); p != nil {
			err = &Error{Line: w.line, Problem: "the workbook is damaged"}
		}
	}()
	for empty := 0; w.rows != nil && empty < emptyRowsEnd && w.rows.Next(); empty++ {
		w.line++
		cells, err := w.rows.Columns()
		if err != nil {
			return record{}, &Error{Line: w.line, Problem: "reading", Err: err}
		}
		if err := w.check(cells); err != nil {
			return record{}, err
		}
		if strings.Join(cells, "") != "" {
			return record{w.line, cells}, nil
		}
	}
	return record{}, w.end()
}

func (w *workbook) check(cells []string) error {
	if len(cells) > maxColumns {
		return &Error{Line: w.line, Problem: "more than 2048 columns: this is no price list"}
	}
	for _, c := range cells {
		if len(c) > maxCell {
			return &Error{Line: w.line, Problem: "a cell of more than 64 KiB"}
		}
	}
	return nil
}

// end closes the workbook behind its last row.
func (w *workbook) end() error {
	if w.rows == nil {
		return io.EOF
	}
	err := w.rows.Error()
	if closed := w.rows.Close(); err == nil {
		err = closed
	}
	if closed := w.file.Close(); err == nil {
		err = closed
	}
	w.rows = nil
	if err != nil {
		return &Error{Line: w.line, Problem: "reading", Err: err}
	}
	return io.EOF
}
