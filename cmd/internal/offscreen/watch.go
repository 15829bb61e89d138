package offscreen

import (
	"bytes"
	"fmt"
	"image"
	"time"
)

// Between two looks at the screen the program has the processor to itself: looking without a pause takes a whole core
// from it. A time that is measured is longer by at most one glance.
const (
	glance = time.Millisecond      // while a time is measured
	pause  = 10 * time.Millisecond // while the whole window is waited for
)

// pixels reads the bytes of an area as the server has them, for comparing.
func (s *Screen) pixels(area image.Rectangle) ([]byte, error) {
	reply, err := s.getImage(area)
	if err != nil {
		return nil, err
	}
	return reply[32:], nil
}

// Settled reads an area until its pixels have stayed the same for a while, and returns them.
func (s *Screen) Settled(area image.Rectangle, still, atMost time.Duration) (*image.RGBA, error) {
	last, err := s.pixels(area)
	began := time.Now()
	changed := began
	for err == nil && time.Since(changed) < still {
		<-time.After(pause)
		var now []byte
		if now, err = s.pixels(area); err == nil && !bytes.Equal(now, last) {
			last, changed = now, time.Now()
		}
		if time.Since(began) > atMost {
			return nil, fmt.Errorf("picture still changes after %v", atMost)
		}
	}
	if err != nil {
		return nil, err
	}
	return s.Grab(area)
}

// Answer presses a key and measures the time until a pixel of the area has changed.
func (s *Screen) Answer(key rune, area image.Rectangle, atMost time.Duration) (time.Duration, error) {
	before, err := s.pixels(area)
	if err != nil {
		return 0, err
	}
	began := time.Now()
	if err := s.Press(key); err != nil {
		return 0, err
	}
	for time.Since(began) < atMost {
		<-time.After(glance)
		now, err := s.pixels(area)
		if err != nil {
			return 0, err
		}
		if !bytes.Equal(now, before) {
			return time.Since(began), nil
		}
	}
	return 0, fmt.Errorf("no pixel of %v changed in %v after the key %q", area, atMost, key)
}

// Lit waits until a pixel of the area is no longer black, as an empty screen is.
func (s *Screen) Lit(area image.Rectangle, atMost time.Duration) error {
	for began := time.Now(); time.Since(began) < atMost; <-time.After(glance) {
		p, err := s.pixels(area)
		if err != nil {
			return err
		}
		for i := 0; i+3 < len(p); i += 4 {
			if p[i] != 0 || p[i+1] != 0 || p[i+2] != 0 {
				return nil
			}
		}
	}
	return fmt.Errorf("%v is still black after %v", area, atMost)
}

// FirstDifference is the first pixel of an area, line by line, in which two pictures differ.
func FirstDifference(a, b *image.RGBA, area image.Rectangle) (at image.Point, differ bool) {
	for y := area.Min.Y; y < area.Max.Y; y++ {
		for x := area.Min.X; x < area.Max.X; x++ {
			if a.RGBAAt(x, y) != b.RGBAAt(x, y) {
				return image.Pt(x, y), true
			}
		}
	}
	return image.Point{}, false
}
