package catalog

import (
	"bytes"
	"errors"
	"fmt"
	"image"
	_ "image/jpeg" // a logo may be one
	_ "image/png"  // or one of these
)

// Logo is the picture of the letterhead: a PNG or JPEG file's bytes. No bytes: none.
type Logo struct {
	Name string `json:"name"` // of the file it was read from
	Data []byte `json:"data"`
}

// Limits of a logo: it goes into every document.
const (
	MostLogoBytes = 1 << 20
	MostLogoSide  = 4000 // pixels
)

// Check refuses what is no picture that can be printed.
func (l Logo) Check() error {
	if len(l.Data) == 0 {
		return nil
	}
	if len(l.Data) > MostLogoBytes {
		return fmt.Errorf("the logo has %d KB: choose a picture of at most %d KB", len(l.Data)>>10, MostLogoBytes>>10)
	}
	size, _, err := image.DecodeConfig(bytes.NewReader(l.Data))
	switch {
	case err != nil:
		return errors.New("the logo is no PNG or JPEG picture")
	case size.Width > MostLogoSide || size.Height > MostLogoSide:
		return fmt.Errorf("the logo has %d × %d pixels: choose a picture of at most %d a side", size.Width, size.Height, MostLogoSide)
	}
	if _, _, err := image.Decode(bytes.NewReader(l.Data)); err != nil {
		return fmt.Errorf("the logo cannot be drawn: %w", err)
	}
	return nil
}
