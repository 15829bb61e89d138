package blanks

import (
	"context"

	"pressworth/catalog"
)

// Imports is what the import page asks of the rest of the program.
type Imports interface {
	// Look reads the beginning of a price file and matches its columns: as they were matched for the supplier last, or
	// by the words of its header.
	Look(path string, supplier int64) (Sheet, error)
	// Compare reads the whole file and says what it would change. It does not change anything, and stops where ctx ends.
	Compare(ctx context.Context, path string, m Matching, o catalog.ImportOptions) (Compared, error)
	// UndoLast takes the last import back and names its file.
	UndoLast(ctx context.Context) (name string, err error)
	// Suppliers are those the shop has.
	Suppliers(ctx context.Context) ([]catalog.Supplier, error)
}

// Sheet is the beginning of a price file.
type Sheet struct {
	Kind    string     // comma, semicolon, tab, pipe, xlsx
	Head    [][]string // its first rows
	Fields  []string   // what a column may hold, in the order they are listed
	Matched Matching
}

// Matching says which column holds what, by the header's words.
type Matching struct {
	Header int               // the row the header stands in, the first is 1; 0: wherever its words are found
	Fields map[string]string // field to the header's text
	Sizes  []string          // headers that are sizes, with prices below them
	Comma  *bool             // the decimal sign is a comma; nil: as the numbers look
	Case   int               // pieces of a case where no column says so
}

// Compared is a price file compared with the catalog.
type Compared struct {
	Report  catalog.ImportReport
	Touched []catalog.TouchedQuote // open quotes that use what changes
	// Apply takes all of it or nothing; progress is told how far it is and is called off the window's goroutine.
	Apply func(ctx context.Context, progress func(done, of int)) error
}

// headers are the words of the row that the header stands in, or of the row with the most of them.
func (s Sheet) headers() []string {
	if h := s.Matched.Header; h >= 1 && h <= len(s.Head) {
		return s.Head[h-1]
	}
	wanted := map[string]bool{}
	for _, text := range s.Matched.Fields {
		wanted[text] = true
	}
	var best []string
	most := -1
	for _, row := range s.Head {
		n := 0
		for _, cell := range row {
			if wanted[cell] {
				n++
			}
		}
		if n > most {
			best, most = row, n
		}
	}
	return best
}
