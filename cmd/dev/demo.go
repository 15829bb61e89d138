package main

import (
	"errors"
	"fmt"
	"image"
	"image/png"
	"os"
	"path/filepath"
	"time"

	"pressworth/cmd/internal/offscreen"
)

// patience is how long a window may take for one step on a slow machine without a graphics card.
const patience = 2 * time.Minute

// stillness is how long the picture must stay the same before it is taken to be done: lists are read behind it.
const stillness = 4 * time.Second

// session is the program's window on a screen without a monitor.
type session struct {
	*task
	server  *offscreen.Server
	program *offscreen.Program
}

// view says how large the screen is, and in which of its looks the window is to be.
type view struct {
	width, height int
	dark          bool
}

// open starts a fresh X server and the program on it, and waits until the window has drawn itself.
func (t *task) open(v view, args ...string) (*session, error) {
	if missing := offscreen.Missing("Xvfb", "xdotool"); missing != nil {
		return nil, fmt.Errorf("not installed: %v", missing)
	}
	server, err := offscreen.Start(t.ctx, v.width, v.height)
	if err != nil {
		return nil, err
	}
	home, err := os.MkdirTemp("", "pressworth-")
	if err != nil {
		server.Stop()
		return nil, err
	}
	if err := v.settle(home); err != nil {
		server.Stop()
		return nil, err
	}
	program, err := server.Run(t.ctx, t.binary(), home, args...)
	if err != nil {
		server.Stop()
		return nil, err
	}
	s := &session{t, server, program}
	if _, err := program.Wait("pressworth: first frame", patience); err != nil {
		s.close()
		return nil, err
	}
	return s, nil
}

// settle leaves the look where the toolkit keeps a program's settings.
func (v view) settle(home string) error {
	mode := map[bool]string{false: "0", true: "1"}[v.dark]
	folder := filepath.Join(home, ".config", "fyne", "org.pressworth.Pressworth")
	if err := os.MkdirAll(folder, 0o700); err != nil {
		return err
	}
	return os.WriteFile(filepath.Join(folder, "preferences.json"), []byte(`{"mode":`+mode+`}`), 0o600)
}

func (s *session) close() {
	s.program.Kill()
	s.server.Stop()
	_ = os.RemoveAll(s.program.Home)
}

// keys sends key presses such as "ctrl+p".
func (s *session) keys(keys ...string) error {
	cmd := s.command("xdotool", append([]string{"key", "--clearmodifiers"}, keys...)...)
	cmd.Env = append(cmd.Env, "DISPLAY="+s.server.Display)
	return cmd.Run()
}

// settled writes what the screen shows, once it has shown the same for a while.
func (s *session) settled(file string) error {
	screen, err := offscreen.Connect(s.server.Display)
	if err != nil {
		return err
	}
	defer screen.Close()
	img, err := screen.Settled(image.Rect(0, 0, screen.Width, screen.Height), stillness, patience)
	if err != nil {
		return err
	}
	return writePNG(file, img)
}

func writePNG(file string, img image.Image) error {
	f, err := os.Create(file)
	if err != nil {
		return err
	}
	return errors.Join(png.Encode(f, img), f.Close())
}

// offscreenDemo drives the demo shop's quote to its PDF and leaves pictures and papers in out/.
func (t *task) offscreenDemo() error {
	t.say("· open the window off screen")
	s, err := t.open(view{width: 1400, height: 900}, "--demo")
	if err != nil {
		return err
	}
	defer s.close()
	total, err := s.program.Wait("pressworth: priced", patience)
	if err != nil {
		return err
	}
	t.say("  the demo quote comes to %s", total)
	if err := s.settled(t.out("window.png")); err != nil {
		return err
	}
	for _, paper := range []struct{ name, key string }{{"the customer's quote", "ctrl+p"}, {"the cost sheet", "ctrl+shift+p"}} {
		if err := s.print(paper.name, paper.key); err != nil {
			return err
		}
	}
	t.say("the window: %s", t.out("window.png"))
	return nil
}

// print presses the key that writes a document, and copies the document to out/.
func (s *session) print(name, key string) error {
	if err := s.keys(key); err != nil {
		return err
	}
	file, err := s.program.Wait("pressworth: wrote", patience)
	if err != nil {
		return err
	}
	content, err := os.ReadFile(file)
	if err != nil {
		return err
	}
	to := s.out(filepath.Base(file))
	s.say("%s: %s", name, to)
	return os.WriteFile(to, content, 0o644)
}
