package pricefile

import (
	"archive/zip"
	"bytes"
	"strings"
	"testing"
)

// A workbook of a few hundred bytes whose sheet says it unpacks to two gigabytes is refused before anything is unpacked.
func TestOpen_refusesAWorkbookThatWouldFillTheMemory(t *testing.T) {
	for _, c := range []struct {
		name  string
		size  uint64
		large bool
	}{{"past the limit", 2 << 30, true}, {"within it, and not as large as it says", 64, false}} {
		t.Run(c.name, func(t *testing.T) {
			_, err := Open(bytes.NewReader(claiming(t, c.size)))
			if err == nil {
				t.Fatal("got no error, want the workbook refused")
			}
			if got := strings.Contains(err.Error(), "limit"); got != c.large {
				t.Errorf("got %q, want refused for its size: %v", err, c.large)
			}
		})
	}
}

// claiming is a workbook whose only sheet says that it unpacks to so many bytes.
func claiming(t *testing.T, size uint64) []byte {
	t.Helper()
	var file bytes.Buffer
	z := zip.NewWriter(&file)
	part, err := z.CreateRaw(&zip.FileHeader{
		Name: "xl/worksheets/sheet1.xml", Method: zip.Deflate, CompressedSize64: 2, UncompressedSize64: size,
	})
	if err == nil {
		_, err = part.Write([]byte{3, 0}) // an empty deflate stream (RFC 1951, section 3.2.6)
	}
	if err == nil {
		err = z.Close()
	}
	if err != nil {
		t.Fatal(err)
	}
	return file.Bytes()
}
