package artwork

import (
	"bytes"
	"encoding/binary"
	"hash/crc32"
	"strings"
	"testing"
)

// A small file that claims to be a huge picture is refused before anything of that size is made; so is a file that is
// huge itself.
func TestRead_refusesWhatWouldFillTheMemory(t *testing.T) {
	head := make([]byte, 13)
	binary.BigEndian.PutUint32(head, 2_000_000)
	binary.BigEndian.PutUint32(head[4:], 2_000_000)
	head[8], head[9] = 8, 6
	chunk := append([]byte("IHDR"), head...)
	var bomb bytes.Buffer
	bomb.WriteString("\x89PNG\r\n\x1a\n\x00\x00\x00\x0d")
	bomb.Write(chunk)
	if err := binary.Write(&bomb, binary.BigEndian, crc32.ChecksumIEEE(chunk)); err != nil {
		t.Fatal(err)
	}
	if _, err := Read(bomb.Bytes()); err == nil || !strings.Contains(err.Error(), "smaller") {
		t.Errorf("a picture of 2 000 000 × 2 000 000: %v", err)
	}
	if _, err := Read(make([]byte, MostBytes+1)); err == nil || !strings.Contains(err.Error(), "MiB") {
		t.Errorf("a file past the limit: %v", err)
	}
}

// A drawing whose part uses itself would be followed until the stack is full.
func TestRead_refusesADrawingThatIsMadeOfItself(t *testing.T) {
	for _, head := range []string{"", `<?xml version="1.0" encoding="ISO-8859-1"?>`} {
		drawing := head + `<svg viewBox="0 0 10 10"><defs><g id="a"><use href="#a"/></g></defs><use href="#a"/></svg>`
		if _, err := Read([]byte(drawing)); err == nil || !strings.Contains(err.Error(), "save it as PNG") {
			t.Errorf("%q: %v", drawing, err)
		}
	}
	plain := `<svg viewBox="0 0 10 10"><defs><path id="a" d="M1 1h8v8h-8z" fill="#c00"/></defs><use href="#a"/></svg>`
	if _, err := Read([]byte(plain)); err != nil {
		t.Errorf("a drawing that uses a part once: %v", err)
	}
}
