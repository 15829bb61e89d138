//go:build cgo

package main

import (
	"crypto/rand"
	"crypto/subtle"
	"encoding/hex"
	"strings"
	"time"

	"fyne.io/fyne/v2"
	"golang.org/x/crypto/argon2"
)

// pins keeps the PIN that leads back from the customer's side, as a salted hash, on this computer: it hides figures from
// a customer's eyes and protects nothing else.
type pins struct {
	prefs fyne.Preferences
	now   func() time.Time
	wrong *wrong
}

func newPins(prefs fyne.Preferences) pins {
	return pins{prefs: prefs, now: time.Now, wrong: &wrong{}}
}

const pinKey = "pin"

// freeTries is how many wrong PINs in a row cost no wait.
const freeTries = 3

// longestWait is how long the wait after wrong PINs becomes at most.
const longestWait = 5 * time.Minute

// wrong is how many wrong PINs were tried in a row, and until when no other is looked at.
type wrong struct {
	tries int
	until time.Time
}

// another counts one more: after the free ones the wait begins at two seconds and doubles.
func (w *wrong) another(now time.Time) {
	w.tries++
	if over := w.tries - freeTries; over > 0 {
		w.until = now.Add(min(longestWait, time.Second<<min(over, 20)))
	}
}

// Has tells whether a PIN is asked for.
func (p pins) Has() bool { return p.prefs.String(pinKey) != "" }

// Set sets another PIN; an empty one asks for none.
func (p pins) Set(pin string) error {
	if pin == "" {
		p.prefs.RemoveValue(pinKey)
		return nil
	}
	salt := make([]byte, 16)
	if _, err := rand.Read(salt); err != nil {
		return err
	}
	p.prefs.SetString(pinKey, hex.EncodeToString(salt)+":"+hex.EncodeToString(hashed(pin, salt)))
	return nil
}

// Fits tells whether it is the PIN; where none is set everything is. After some wrong ones it waits, and refuses even the
// right one meanwhile.
func (p pins) Fits(typed string) bool {
	if !p.Has() {
		return true
	}
	if typed == "" || p.now().Before(p.wrong.until) {
		return false // the empty one only asks whether one is set
	}
	salt, hash, _ := strings.Cut(p.prefs.String(pinKey), ":")
	saltBytes, err1 := hex.DecodeString(salt)
	want, err2 := hex.DecodeString(hash)
	fits := err1 == nil && err2 == nil && subtle.ConstantTimeCompare(hashed(typed, saltBytes), want) == 1
	if fits {
		*p.wrong = wrong{}
	} else {
		p.wrong.another(p.now())
	}
	return fits
}

// hashed is Argon2id with 19 MiB, two passes and one lane, the least that OWASP's Password Storage Cheat Sheet asks for
// (from memory).
func hashed(pin string, salt []byte) []byte {
	return argon2.IDKey([]byte(pin), salt, 2, 19*1024, 1, 32)
}
