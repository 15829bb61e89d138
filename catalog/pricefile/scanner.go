package pricefile

import (
	"errors"
	"io"
)

// scanner divides a text into rows and cells. Cells may be quoted, with line ends and doubled quotes in them; a bare
// quote inside an unquoted cell is a character like any other.
type scanner struct {
	r    io.Reader
	mark byte // between cells
	buf  []byte
	at   int // next byte in buf
	err  error
	line int // of the next byte

	text  []byte // of the row so far
	ends  []int  // of its cells in text
	cells []string
}

func newScanner(r io.Reader, mark byte) *scanner {
	return &scanner{r: r, mark: mark, line: 1, buf: make([]byte, 0, 64<<10)}
}

// peek gives the next byte; false at the end or after an error.
func (s *scanner) peek() (byte, bool) {
	for s.at == len(s.buf) {
		if s.err != nil {
			return 0, false
		}
		n, err := s.r.Read(s.buf[:cap(s.buf)])
		s.buf, s.at, s.err = s.buf[:n], 0, err
	}
	return s.buf[s.at], true
}

// next reads a row; rows without anything in them are passed over.
func (s *scanner) next() (record, error) {
	for {
		first := s.line
		s.text, s.ends = s.text[:0], s.ends[:0]
		if _, ok := s.peek(); !ok {
			return record{}, s.end()
		}
		if err := s.row(first); err != nil {
			return record{}, err
		}
		if len(s.text) > 0 && !(first == 1 && s.isSeparatorLine()) {
			return record{first, s.cut()}, nil
		}
	}
}

// end is how reading ended: io.EOF, or what went wrong on the line.
func (s *scanner) end() error {
	if errors.Is(s.err, io.EOF) {
		return io.EOF
	}
	return &Error{Line: s.line, Problem: "reading", Err: s.err}
}

// row reads cells until the line ends.
func (s *scanner) row(first int) error {
	for {
		more, err := s.cell(first)
		if err != nil {
			return err
		}
		s.ends = append(s.ends, len(s.text))
		if len(s.ends) > maxColumns {
			return &Error{Line: first, Problem: "more than 2048 columns: this is no price list"}
		}
		if !more {
			return nil
		}
	}
}

// cell reads one cell with the mark behind it; more is false at the end of the row.
func (s *scanner) cell(first int) (more bool, err error) {
	start := len(s.text)
	for {
		s.plain(start)
		c, ok := s.peek()
		switch {
		case !ok:
			return false, s.broken()
		case c == '"' && blank(s.text[start:]):
			s.text = s.text[:start]
			s.at++
			return s.quoted(first)
		case c == s.mark:
			s.at++
			return true, nil
		case c == '\n' || c == '\r':
			s.lineEnd()
			return false, nil
		}
		if err := s.take(c, start, first); err != nil {
			return false, err
		}
	}
}

// plain takes the bytes at hand that mean only themselves, as far as the bounds of a cell and a row surely allow.
func (s *scanner) plain(start int) {
	room := min(maxCell-(len(s.text)-start), maxRow-len(s.text))
	from := s.at
	end := min(len(s.buf), from+room)
	i := from
	for i < end {
		if c := s.buf[i]; c == s.mark || c == '"' || c == '\n' || c == '\r' || c == 0 {
			break
		}
		i++
	}
	s.text = append(s.text, s.buf[from:i]...)
	s.at = i
}

// broken is nil where the text just ended.
func (s *scanner) broken() error {
	if errors.Is(s.err, io.EOF) {
		return nil
	}
	return s.end()
}

func blank(b []byte) bool {
	for _, c := range b {
		if c != ' ' {
			return false
		}
	}
	return true
}

// quoted reads the rest of a quoted cell.
func (s *scanner) quoted(first int) (more bool, err error) {
	start, opened := len(s.text), s.line
	for {
		c, ok := s.peek()
		if !ok {
			if !errors.Is(s.err, io.EOF) {
				return false, s.end()
			}
			return false, &Error{Line: opened, Problem: "a quote opens here and is never closed"}
		}
		if c == '"' {
			s.at++
			if c, ok = s.peek(); !ok || c != '"' {
				return s.afterQuote(opened)
			}
		}
		if c == '\n' {
			s.line++
		}
		if err := s.take(c, start, first); err != nil {
			return false, err
		}
	}
}

// afterQuote reads what may stand behind a closing quote: spaces, then a mark or the end of the row.
func (s *scanner) afterQuote(opened int) (more bool, err error) {
	for {
		c, ok := s.peek()
		switch {
		case !ok:
			return false, s.broken()
		case c == s.mark:
			s.at++
			return true, nil
		case c == '\n' || c == '\r':
			s.lineEnd()
			return false, nil
		case c != ' ':
			return false, &Error{Line: opened, Problem: "a quoted cell goes on behind its closing quote"}
		}
		s.at++
	}
}

// take adds a byte to the cell that began at start.
func (s *scanner) take(c byte, start, first int) error {
	switch {
	case c == 0:
		return &Error{Line: s.line, Problem: "a NUL byte: this is no text, or it is damaged"}
	case len(s.text)-start >= maxCell:
		return &Error{Line: first, Problem: "a cell of more than 64 KiB: is a quote missing?"}
	case len(s.text) >= maxRow:
		return &Error{Line: first, Problem: "a row of more than 1 MiB: this is no price list"}
	}
	s.text = append(s.text, c)
	s.at++
	return nil
}

// lineEnd passes over \n, \r\n or \r.
func (s *scanner) lineEnd() {
	c := s.buf[s.at]
	s.at++
	s.line++
	if c == '\r' {
		if c, ok := s.peek(); ok && c == '\n' {
			s.at++
		}
	}
}

// isSeparatorLine is for a first line like sep=; which is no row.
func (s *scanner) isSeparatorLine() bool { return named(s.text) != 0 || string(s.text) == "sep=" }

// cut makes cells of the row's text, with one copy of it.
func (s *scanner) cut() []string {
	all, from := string(s.text), 0
	s.cells = s.cells[:0]
	for _, end := range s.ends {
		s.cells = append(s.cells, all[from:end])
		from = end
	}
	return s.cells
}
