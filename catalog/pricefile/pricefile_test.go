package pricefile_test

import (
	"bytes"
	"encoding/binary"
	"errors"
	"fmt"
	"io"
	"slices"
	"strings"
	"testing"
	"testing/iotest"
	"unicode/utf16"

	"github.com/xuri/excelize/v2"

	"pressworth/catalog"
	"pressworth/catalog/pricefile"
)

// read takes a whole list by the guessed columns and writes its rows one a line.
func read(r io.Reader) (rows []string, refused []string, err error) {
	f, err := pricefile.Open(r)
	if err != nil {
		return nil, nil, err
	}
	err = f.Rows(f.Guess(), func(r catalog.PriceRow) error {
		rows = append(rows, strings.Join([]string{fmt.Sprint(r.Line), r.Style, r.Name, r.Color, r.Size, r.Breaks()}, "/"))
		return nil
	}, func(r catalog.Refused) {
		refused = append(refused, fmt.Sprintf("%d %s: %s", r.Line, r.Field, r.Reason))
	})
	return rows, refused, err
}

func wide(text string, order binary.ByteOrder, mark bool) string {
	var b bytes.Buffer
	if mark {
		text = "\uFEFF" + text
	}
	for _, u := range utf16.Encode([]rune(text)) {
		var two [2]byte
		order.PutUint16(two[:], u)
		b.Write(two[:])
	}
	return b.String()
}

func TestRows_dialects(t *testing.T) {
	plain := "Style,Description,Colour,Size,Price\nLS-240,Piqué tee,Navy,M,4.35\n"
	want := []string{"2/LS-240/Piqué tee/Navy/M/4.35"}
	cases := map[string]struct {
		text string
		want []string
	}{
		"plain":                          {plain, want},
		"with a byte order mark":         {"\uFEFF" + plain, want},
		"with carriage returns":          {strings.ReplaceAll(plain, "\n", "\r\n"), want},
		"with carriage returns only":     {strings.ReplaceAll(plain, "\n", "\r"), want},
		"without a last line end":        {strings.TrimSpace(plain), want},
		"tabs":                           {strings.ReplaceAll(plain, ",", "\t"), want},
		"semicolons":                     {strings.ReplaceAll(plain, ",", ";"), want},
		"pipes":                          {strings.ReplaceAll(plain, ",", "|"), want},
		"a separator line":               {"sep=;\n" + strings.ReplaceAll(plain, ",", ";"), []string{"3/LS-240/Piqué tee/Navy/M/4.35"}},
		"Windows-1252":                   {strings.ReplaceAll(plain, "é", "\xE9"), want},
		"UTF-16, small end first":        {wide(plain, binary.LittleEndian, true), want},
		"UTF-16, big end first":          {wide(plain, binary.BigEndian, true), want},
		"UTF-16 without its mark":        {wide(plain, binary.LittleEndian, false), want},
		"quoted cells":                   {"\"Style\",Description,Colour,Size,Price\n\"LS-240\", \"A \"\"good\"\" tee\" ,Navy,M,\"4.35\"\n", []string{`2/LS-240/A "good" tee/Navy/M/4.35`}},
		"a line end in a quoted cell":    {"Style,Description,Colour,Size,Price\nA,\"two\nlines\",Navy,M,1.10\nB,x,Navy,M,1.20\n", []string{"2/A/two lines/Navy/M/1.10", "4/B/x/Navy/M/1.20"}},
		"a bare quote":                   {"Style,Description,Colour,Size,Price\nA,tote 15\" wide,Navy,M,1.10\n", []string{`2/A/tote 15" wide/Navy/M/1.10`}},
		"a header further down":          {"Price list of May\n\nall prices in USD,,,,\nStyle #,Description,Color Name,Size,Each\nA,x,Navy,M,1.10\n", []string{"5/A/x/Navy/M/1.10"}},
		"decimal commas":                 {"Style;Description;Colour;Size;Price\nA;x;Navy;M;1.234,50\nB;x;Navy;M;4,35\n", []string{"2/A/x/Navy/M/1234.50", "3/B/x/Navy/M/4.35"}},
		"currency signs and thousands":   {"Style,Description,Colour,Size,Price\nA,x,Navy,M,\"$1,234.50\"\nB,x,Navy,M,USD 4.35\nC,x,Navy,M,7\nD,x,Navy,M,.5\n", []string{"2/A/x/Navy/M/1234.50", "3/B/x/Navy/M/4.35", "4/C/x/Navy/M/7.00", "5/D/x/Navy/M/0.50"}},
		"dozen and case":                 {"Style,Name,Color,Size,Piece,Dozen,Case,Case Qty\nA,x,Navy,M,4.35,4.10,3.90,36\nB,x,Navy,M,4.35,,3.90,\n", []string{"2/A/x/Navy/M/4.35 12:4.10 36:3.90", "3/B/x/Navy/M/4.35 72:3.90"}},
		"a column a size":                {"Style,Name,Color,S,M,XXL,One Size\nA,x,Navy,4.35,4.35,6.10,\nB,cap,Navy,,,,4.15\n", []string{"2/A/x/Navy/S/4.35", "2/A/x/Navy/M/4.35", "2/A/x/Navy/2XL/6.10", "3/B/cap/Navy/OS/4.15"}},
		"sizes written in several ways":  {"Style,Name,Color,Size,Price\nA,x,Navy,xxl,6\nA,x,Navy, one size ,6\nA,x,Navy,,6\n", []string{"2/A/x/Navy/2XL/6.00", "3/A/x/Navy/OS/6.00", "4/A/x/Navy/OS/6.00"}},
		"without colour, size and name":  {"Item No,Price\nA,6\n", []string{"2/A///OS/6.00"}},
		"half a cent":                    {"Item No,Price\nA,6.1250\n", []string{"2/A///OS/6.125"}},
		"fewer cells than the header":    {"Style,Price,Name,Color\nA,6\n", []string{"2/A///OS/6.00"}},
		"more cells than the header":     {"Style,Price\nA,6,x,,y\n", []string{"2/A///OS/6.00"}},
		"empty lines and lines of marks": {"Style,Price\n\n,,,\nA,6\n\n", []string{"4/A///OS/6.00"}},
	}
	for name, c := range cases {
		t.Run(name, func(t *testing.T) {
			rows, refused, err := read(strings.NewReader(c.text))
			if err != nil || len(refused) > 0 || !slices.Equal(rows, c.want) {
				t.Errorf("got %q, refused %q, %v\nwant %q", rows, refused, err, c.want)
			}
			slow, _, err := read(iotest.OneByteReader(strings.NewReader(c.text)))
			if err != nil || !slices.Equal(slow, c.want) {
				t.Errorf("byte by byte: got %q, %v\nwant %q", slow, err, c.want)
			}
		})
	}
}

func TestRows_refusedWithLineFieldAndReason(t *testing.T) {
	head := "Style,Name,Color,Size,Piece,Dozen,Case Qty,Sale,Sale until\n"
	cases := map[string]string{
		",x,Navy,M,4.35":                                "2 style: no style number",
		"A,x,Navy,M,":                                   "2 price: no price",
		"A,x,Navy,M,\"4,3O\"":                           `2 price: "4,3O" is not a price`,
		"A,x,Navy,M,-1":                                 `2 price: "-1" is below zero`,
		"A,x,Navy,M,(1.00)":                             `2 price: "(1.00)" is below zero`,
		"A,x,Navy,M,1.23456":                            `2 price: "1.23456" has more than four decimals`,
		"A,x,Navy,M,123456789012":                       `2 price: "123456789012" is a million or more: is this a price?`,
		"A,x,Navy,M,1e3":                                `2 price: "1e3" is not a price`,
		"A,x,Navy,M,4.35,48.00":                         "2 dozen: the price each by the dozen, 48.00, is above the price of one piece, 4.35: is it for the whole dozen?",
		"A,x,Navy,M,4.35,,many":                         `2 case_quantity: "many" is not a number of pieces`,
		"A,x,Navy,M,4.35,,,4.00,later":                  `2 sale_until: "later" is not a day: write it like 2026-05-31`,
		"A,x,Navy," + strings.Repeat("M", 30) + ",4.35": "2 size: longer than 20 characters: is this a size?",
	}
	for row, want := range cases {
		t.Run(want, func(t *testing.T) {
			rows, refused, err := read(strings.NewReader(head + row + "\nB,x,Navy,M,4.35\n"))
			if err != nil || len(refused) != 1 || refused[0] != want || len(rows) != 1 {
				t.Errorf("row %s: got rows %q, refused %q, %v\nwant the other row, and %q", row, rows, refused, err, want)
			}
		})
	}
}

func TestRows_aRowIsNeverHalfTaken(t *testing.T) {
	rows, refused, err := read(strings.NewReader("Style,Name,Color,S,M,L\nA,x,Navy,4.35,oops,4.35\n"))
	if err != nil || len(rows) != 0 || len(refused) != 1 || !strings.HasPrefix(refused[0], "2 M:") {
		t.Errorf("got %q, refused %q, %v; want nothing taken and column M named", rows, refused, err)
	}
}

func TestOpen_damagedFilesNameTheLine(t *testing.T) {
	good := "Style,Name,Price\n" + strings.Repeat("A,x,1.00\n", 600)
	cases := map[string]struct {
		file io.Reader
		want string
	}{
		"empty":                          {strings.NewReader(""), "the file is empty"},
		"blank":                          {strings.NewReader(" \n\n"), "the file is empty"},
		"a quote that is never closed":   {strings.NewReader(good + "A,\"x,1.00\n"), "line 602: a quote opens here and is never closed"},
		"text behind a quote":            {strings.NewReader(good + "A,\"x\" y,1.00\n"), "line 602: a quoted cell goes on behind its closing quote"},
		"a NUL byte":                     {strings.NewReader(good + "A,\x00,1.00\n"), "line 602: a NUL byte"},
		"a cell of 10 MB":                {strings.NewReader(good + "A," + strings.Repeat("x", 10<<20) + ",1.00\n"), "line 602: a cell of more than 64 KiB"},
		"a quoted cell of 10 MB":         {strings.NewReader(good + "A,\"" + strings.Repeat("x\n", 5<<20) + "\",1.00\n"), "line 602: a cell of more than 64 KiB"},
		"a million columns":              {strings.NewReader(good + strings.Repeat("A,", 1_000_000) + "\n"), "line 602: more than 2048 columns"},
		"a million columns at the start": {strings.NewReader(strings.Repeat("A,", 1_000_000) + "\n"), "line 1: more than 2048 columns"},
		"a file that vanishes":           {io.MultiReader(strings.NewReader(good), iotest.ErrReader(errors.New("stale handle"))), "line 602: reading: stale handle"},
		"a file that was never there":    {iotest.ErrReader(errors.New("is a directory")), "line 1: reading: is a directory"},
		"UTF-16 cut in a character":      {strings.NewReader(wide(good, binary.LittleEndian, true) + "A"), "line 602: reading: unexpected EOF"},
		"a PDF":                          {strings.NewReader("%PDF-1.7\n..."), "a PDF"},
		"an old spreadsheet":             {strings.NewReader("\xD0\xCF\x11\xE0\xA1\xB1\x1A\xE1"), "an old spreadsheet file"},
		"a workbook that is none":        {strings.NewReader("PK\x03\x04 and then nothing"), "the workbook cannot be read"},
		"no header":                      {strings.NewReader("1,2,3\n4,5,6\n"), "no column is matched with style and price"},
	}
	for name, c := range cases {
		t.Run(name, func(t *testing.T) {
			_, _, err := read(c.file)
			var problem *pricefile.Error
			if !errors.As(err, &problem) || !strings.HasPrefix(err.Error(), c.want) {
				t.Errorf("got %v, want %s", err, c.want)
			}
		})
	}
}

func TestOpen_workbook(t *testing.T) {
	book := excelize.NewFile()
	defer func() {
		if err := book.Close(); err != nil {
			t.Error(err)
		}
	}()
	for cell, v := range map[string]any{
		"A1": "Price list", "A3": "Style", "B3": "Description", "C3": "Colour", "D3": "Size", "E3": "Price",
		"A4": "LS-240", "B4": "Piqué tee", "C4": "Navy", "D4": "M", "E4": 4.35, "A5": 1402, "B5": "x", "C5": "Red", "D5": "XXL", "E5": "6.1",
	} {
		if err := book.SetCellValue("Sheet1", cell, v); err != nil {
			t.Fatal(err)
		}
	}
	var b bytes.Buffer
	if err := book.Write(&b); err != nil {
		t.Fatal(err)
	}
	want := []string{"4/LS-240/Piqué tee/Navy/M/4.35", "5/1402/x/Red/2XL/6.10"}
	rows, refused, err := read(bytes.NewReader(b.Bytes()))
	if err != nil || len(refused) > 0 || !slices.Equal(rows, want) {
		t.Errorf("got %q, refused %q, %v\nwant %q", rows, refused, err, want)
	}
	for cut := 0; cut < b.Len(); cut += b.Len()/40 + 1 {
		if _, _, err := read(bytes.NewReader(b.Bytes()[:cut])); err == nil {
			t.Errorf("a workbook cut off after %d of %d bytes was read", cut, b.Len())
		}
	}
}

func TestGuess_canBeCorrected(t *testing.T) {
	f, err := pricefile.Open(strings.NewReader("Code,Text,Cost A,Cost B\nA,x,1.00,2.00\n"))
	if err != nil {
		t.Fatal(err)
	}
	c := f.Guess()
	c.Fields = map[string]string{pricefile.Style: "Code", pricefile.Name: "Text", pricefile.Price: "Cost B"}
	var got catalog.PriceRow
	err = f.Rows(c, func(r catalog.PriceRow) error { got = r; return nil }, func(r catalog.Refused) { t.Errorf("refused: %+v", r) })
	if err != nil || got.Piece != 20000 || got.Name != "x" {
		t.Errorf("got %+v, %v; want 2.00 from column Cost B", got, err)
	}
}

func TestRecall_matchesTheSuppliersNextFile(t *testing.T) {
	open := func(text string) *pricefile.File {
		f, err := pricefile.Open(strings.NewReader(text))
		if err != nil {
			t.Fatal(err)
		}
		return f
	}
	mine := pricefile.Columns{Fields: map[string]string{pricefile.Style: "Code", pricefile.Price: "Cost B"}}
	next := open("List of June\nCost A,Code,Cost B\n1,A,2\n").Recall(mine.Keep())
	if next.Fields[pricefile.Price] != "Cost B" {
		t.Errorf("same headers in another order: got %+v, want %+v", next, mine)
	}
	for _, kept := range []string{mine.Keep(), "", "{}", "null"} {
		other := open("Style,Price\nA,2\n").Recall(kept)
		if other.Fields[pricefile.Price] != "Price" {
			t.Errorf("other headers, kept %q: got %+v, want the guess", kept, other)
		}
	}
}

func FuzzRows(f *testing.F) {
	for _, s := range []string{
		"Style,Name,Price\nA,x,1.00\n", "Style;S;M\nA;1,00;2,00\n", "sep=|\nStyle|Price\nA|1\n", "\"Style\",\"Price\"\n\"A\",\"1\n", "\xFF\xFES\x00t\x00",
		"PK\x03\x04", "Style,Price\r\rA,$1,234.50", "Style,Price,Sale until\nA,1,1/2/26\n",
	} {
		f.Add([]byte(s))
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		file, err := pricefile.Open(bytes.NewReader(data))
		if err != nil {
			return
		}
		err = file.Rows(file.Guess(), func(r catalog.PriceRow) error {
			if r.Style == "" || r.Size == "" || r.Piece <= 0 || r.Line < 1 {
				t.Errorf("a row was taken that is none: %+v", r)
			}
			if _, err := catalog.ReadBreaks(r.Breaks()); err != nil {
				t.Errorf("prices that cannot be read back: %v in %+v", err, r)
			}
			return nil
		}, func(r catalog.Refused) {
			if r.Line < 1 || r.Field == "" || r.Reason == "" {
				t.Errorf("refused without line, field or reason: %+v", r)
			}
		})
		var problem *pricefile.Error
		if err != nil && !errors.As(err, &problem) {
			t.Errorf("an error of another kind: %v", err)
		}
	})
}
