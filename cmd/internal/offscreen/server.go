package offscreen

import (
	"bufio"
	"context"
	"fmt"
	"os"
	"os/exec"
	"strings"
)

// Server is a running Xvfb.
type Server struct {
	Display string // like ":3"
	cmd     *exec.Cmd
}

// Start runs a fresh X server with one screen of the given size, on a display number that it picks itself. It is up
// when Start returns.
func Start(ctx context.Context, width, height int) (*Server, error) {
	path, err := exec.LookPath("Xvfb")
	if err != nil {
		return nil, err
	}
	r, w, err := os.Pipe()
	if err != nil {
		return nil, err
	}
	defer r.Close()
	cmd := exec.CommandContext(ctx, path, "-displayfd", "3", "-screen", "0", fmt.Sprintf("%dx%dx24", width, height),
		"-nolisten", "tcp", "-noreset", "-dpi", "96")
	cmd.ExtraFiles = []*os.File{w}
	if err := cmd.Start(); err != nil {
		w.Close()
		return nil, err
	}
	w.Close()
	number, err := bufio.NewReader(r).ReadString('\n')
	if err != nil {
		_ = cmd.Process.Kill()
		return nil, fmt.Errorf("xvfb gave no display: %w, %w", err, cmd.Wait())
	}
	return &Server{Display: ":" + strings.TrimSpace(number), cmd: cmd}, nil
}

// Stop ends the server.
func (s *Server) Stop() {
	_ = s.cmd.Process.Kill()
	_ = s.cmd.Wait()
}

// Missing names those of the programs that are not installed.
func Missing(programs ...string) (missing []string) {
	for _, p := range programs {
		if _, err := exec.LookPath(p); err != nil {
			missing = append(missing, p)
		}
	}
	return missing
}
