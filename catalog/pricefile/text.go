package pricefile

import (
	"bufio"
	"bytes"
	"io"
	"strings"
)

// delimiters in the order they are preferred where they do equally well.
var delimiters = []struct {
	mark byte
	name string
}{{',', "comma"}, {';', "semicolon"}, {'\t', "tab"}, {'|', "pipe"}}

// openText finds out encoding and delimiter from the head of a text. The reader still has the head before it.
func openText(r *bufio.Reader, head []byte) (kind string, rows source, err error) {
	var text io.Reader = r
	big, wide := utf16Kind(head)
	for _, mark := range []string{utf8BOM, "\xFE\xFF", "\xFF\xFE"} {
		if bytes.HasPrefix(head, []byte(mark)) {
			head = head[len(mark):]
			if _, err := r.Discard(len(mark)); err != nil {
				return "", nil, &Error{Line: 1, Problem: "reading", Err: err}
			}
			break
		}
	}
	if wide {
		text = &utf16Reader{r: r, big: big}
		head = decodeHead(head, big)
	}
	mark := named(head)
	if mark == 0 {
		mark = delimiter(head)
	}
	for _, d := range delimiters {
		if d.mark == mark {
			kind = d.name
		}
	}
	return kind, newScanner(text, mark), nil
}

// named is the delimiter that a first line like sep=; says, as some spreadsheets write it.
func named(head []byte) byte {
	line, _, _ := bytes.Cut(head, []byte("\n"))
	line = bytes.TrimRight(line, "\r")
	if rest, ok := bytes.CutPrefix(bytes.ToLower(line), []byte("sep=")); ok && len(rest) == 1 && strings.IndexByte(",;\t|", rest[0]) >= 0 {
		return rest[0]
	}
	return 0
}

// delimiter is the one under which the first rows have the most columns in common.
func delimiter(head []byte) byte {
	best, bestScore := byte(','), 0
	for _, d := range delimiters {
		if score := agreement(head, d.mark); score > bestScore {
			best, bestScore = d.mark, score
		}
	}
	return best
}

// agreement is the number of cells in rows that have the most frequent number of columns, 0 if that is one.
func agreement(head []byte, mark byte) int {
	s := newScanner(bytes.NewReader(head), mark)
	counts := make(map[int]int)
	for range headRows {
		r, err := s.next()
		if err != nil {
			break
		}
		counts[len(r.cells)]++
	}
	best := 0
	for columns, rows := range counts {
		if columns > 1 {
			best = max(best, columns*rows)
		}
	}
	return best
}
