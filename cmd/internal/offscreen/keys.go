package offscreen

import (
	"errors"
	"fmt"
)

// keyPress is how a character is typed: a key, with or without Shift.
type keyPress struct {
	code  byte
	shift bool
}

// Names of keys beside the characters, by their X keysyms (X11/keysymdef.h).
const (
	Tab       rune = 0xff09
	Return    rune = 0xff0d
	Escape    rune = 0xff1b
	BackSpace rune = 0xff08
	Left      rune = 0xff51
	Right     rune = 0xff53
	shiftKey  rune = 0xffe1
)

// loadKeys asks for the keyboard's layout and for the extension that presses keys.
func (s *Screen) loadKeys() error {
	const getKeyboardMapping, queryExtension = 101, 98
	n := int(s.maxKey) - int(s.minKey) + 1
	reply, err := s.ask([]byte{getKeyboardMapping, 0, 0, 0, s.minKey, byte(n), 0, 0})
	if err != nil {
		return err
	}
	per := int(reply[1])
	s.keys = map[uint32]keyPress{}
	for i := n - 1; i >= 0; i-- {
		for column := min(per, 2) - 1; column >= 0; column-- {
			sym := le.Uint32(reply[32+4*(i*per+column):])
			s.keys[sym] = keyPress{s.minKey + byte(i), column == 1}
		}
	}
	name := "XTEST"
	q := make([]byte, 16)
	q[0] = queryExtension
	le.PutUint16(q[4:], uint16(len(name)))
	copy(q[8:], name)
	if reply, err = s.ask(q); err != nil {
		return err
	}
	if reply[8] == 0 {
		return errors.New("no XTEST extension")
	}
	s.xtest = reply[9]
	return nil
}

// Press presses and releases the key of a character, or of one of the named keys.
func (s *Screen) Press(key rune) error {
	k, ok := s.keys[uint32(key)]
	if !ok {
		return fmt.Errorf("no key for %q", key)
	}
	shift := s.keys[uint32(shiftKey)].code
	var q []byte
	if k.shift {
		q = s.fake(q, down, shift)
	}
	q = s.fake(s.fake(q, down, k.code), up, k.code)
	if k.shift {
		q = s.fake(q, up, shift)
	}
	_, err := s.conn.Write(q)
	return err
}

const down, up = 2, 3 // KeyPress and KeyRelease

// fake appends XTEST's FakeInput request.
func (s *Screen) fake(q []byte, event, code byte) []byte {
	r := make([]byte, 36)
	r[0], r[1], r[4], r[5] = s.xtest, 2, event, code
	le.PutUint16(r[2:], 9)
	le.PutUint32(r[12:], s.root)
	return append(q, r...)
}
