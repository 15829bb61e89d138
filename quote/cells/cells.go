// Package cells makes texts safe to stand in the cells of a table that a spreadsheet opens.
//
// Not in this package: tables, and how they are written to files.
package cells

import "strings"

// Harmless gives a cell's text in a form that no spreadsheet takes for a formula: what begins with =, +, -, @, a tab or
// a line end gets an apostrophe before it. A plain number stays as it is. Every CSV and XLSX that the program writes
// goes through it.
func Harmless(cell string) string {
	if cell == "" {
		return cell
	}
	begin := strings.TrimLeft(cell, " \u00a0\u3000")
	if begin == "" || !strings.ContainsRune("=+-@\t\r\n|%＝＋－＠", []rune(begin)[0]) {
		return cell
	}
	if plainNumber(cell) {
		return cell
	}
	return "'" + cell
}

// plainNumber is digits with at most one point, and a minus before them.
func plainNumber(s string) bool {
	s = strings.TrimPrefix(s, "-")
	whole, rest, point := strings.Cut(s, ".")
	return whole != "" && digits(whole) && digits(rest) && (!point || rest != "")
}

func digits(s string) bool { return strings.Trim(s, "0123456789") == "" }
