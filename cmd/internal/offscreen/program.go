package offscreen

import (
	"bufio"
	"context"
	"fmt"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"sync"
	"time"
)

// Program is the built program, running with a home folder of its own and telling on standard error what it does.
type Program struct {
	Home  string
	cmd   *exec.Cmd
	mu    sync.Mutex
	said  []line
	more  chan struct{} // closed and made anew at every line
	ended chan struct{}
	err   error
}

type line struct {
	text   string
	waited bool // a Wait has returned it
}

// Run starts the binary on the server with the given home folder, in which it finds nothing of the user's.
func (s *Server) Run(ctx context.Context, binary, home string, args ...string) (*Program, error) {
	cmd := exec.CommandContext(ctx, binary, args...)
	cmd.Env = append(cleanEnv(), "DISPLAY="+s.Display, "HOME="+home, "XDG_DATA_HOME="+filepath.Join(home, "data"),
		"LANG=C.UTF-8", "LIBGL_ALWAYS_SOFTWARE=1", "XDG_RUNTIME_DIR="+home, "PRESSWORTH_TRACE=1")
	if err := os.MkdirAll(filepath.Join(home, ".cache"), 0o700); err != nil {
		return nil, err
	}
	return run(cmd, home)
}

func run(cmd *exec.Cmd, home string) (*Program, error) {
	pipe, err := cmd.StderrPipe()
	if err != nil {
		return nil, err
	}
	if err := cmd.Start(); err != nil {
		return nil, err
	}
	p := &Program{Home: home, cmd: cmd, more: make(chan struct{}), ended: make(chan struct{})}
	go p.read(pipe)
	return p, nil
}

// cleanEnv is the environment without what would lead the program to the user's own things.
func cleanEnv() (env []string) {
	for _, e := range os.Environ() {
		name, _, _ := strings.Cut(e, "=")
		if strings.HasPrefix(name, "XDG_") || name == "HOME" || name == "DISPLAY" || name == "WAYLAND_DISPLAY" ||
			name == "LANG" || strings.HasPrefix(name, "LC_") || strings.HasPrefix(name, "FYNE_") {
			continue
		}
		env = append(env, e)
	}
	return env
}

func (p *Program) read(pipe io.Reader) {
	in := bufio.NewScanner(pipe)
	in.Buffer(nil, 1<<20)
	for in.Scan() {
		p.mu.Lock()
		p.said = append(p.said, line{text: in.Text()})
		close(p.more)
		p.more = make(chan struct{})
		p.mu.Unlock()
	}
	p.err = p.cmd.Wait()
	close(p.ended)
}

// Wait returns the rest of the first line that begins with the prefix and was not returned before; it waits for it if
// need be. The error holds all that the program said, where it ends or the time runs out before it says such a line.
func (p *Program) Wait(prefix string, atMost time.Duration) (string, error) {
	limit := time.NewTimer(atMost)
	defer limit.Stop()
	for {
		rest, ok, more := p.take(prefix)
		if ok {
			return rest, nil
		}
		select {
		case <-more:
		case <-p.ended:
			if rest, ok, _ := p.take(prefix); ok {
				return rest, nil
			}
			return "", fmt.Errorf("program ended (%w) before it said %q; it said:\n%s", p.err, prefix, p.Said())
		case <-limit.C:
			return "", fmt.Errorf("program did not say %q in %v; it said:\n%s", prefix, atMost, p.Said())
		}
	}
}

// take returns a line if there is one, and what to wait for if there is none.
func (p *Program) take(prefix string) (rest string, ok bool, more <-chan struct{}) {
	p.mu.Lock()
	defer p.mu.Unlock()
	for i, l := range p.said {
		if rest, ok := strings.CutPrefix(l.text, prefix); ok && !l.waited {
			p.said[i].waited = true
			return strings.TrimSpace(rest), true, p.more
		}
	}
	return "", false, p.more
}

// Said is everything that the program has written to standard error so far.
func (p *Program) Said() string {
	p.mu.Lock()
	defer p.mu.Unlock()
	var b strings.Builder
	for _, l := range p.said {
		b.WriteString(l.text + "\n")
	}
	return b.String()
}

// Pid is the program's process.
func (p *Program) Pid() int { return p.cmd.Process.Pid }

// Kill ends the program at once, as a power cut would, and waits until it is gone.
func (p *Program) Kill() {
	_ = p.cmd.Process.Kill()
	<-p.ended
}

// Ended waits until the program has ended by itself.
func (p *Program) Ended(atMost time.Duration) error {
	select {
	case <-p.ended:
		return p.err
	case <-time.After(atMost):
		return fmt.Errorf("program still runs after %v; it said:\n%s", atMost, p.Said())
	}
}
