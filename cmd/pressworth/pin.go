//go:build cgo

package main

import (
	"crypto/rand"
	"crypto/subtle"
	"encoding/hex"
	"strings"

	"fyne.io/fyne/v2"
	"golang.org/x/crypto/argon2"
)

// pins keeps the PIN that leads back from the customer's side, as a salted hash, on this computer: it hides figures from
// a customer's eyes and protects nothing else.
type pins struct{ prefs fyne.Preferences }

const pinKey = "pin"

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

// Fits tells whether it is the PIN; where none is set everything is.
func (p pins) Fits(typed string) bool {
	if !p.Has() {
		return true
	}
	salt, hash, _ := strings.Cut(p.prefs.String(pinKey), ":")
	saltBytes, err1 := hex.DecodeString(salt)
	want, err2 := hex.DecodeString(hash)
	return err1 == nil && err2 == nil && subtle.ConstantTimeCompare(hashed(typed, saltBytes), want) == 1
}

// hashed is Argon2id with 19 MiB, two passes and one lane, the least that OWASP's Password Storage Cheat Sheet asks for
// (from memory).
func hashed(pin string, salt []byte) []byte {
	return argon2.IDKey([]byte(pin), salt, 2, 19*1024, 1, 32)
}
