package offscreen

import (
	"image"
	"os/exec"
	"slices"
	"testing"
	"time"
)

func server(t *testing.T) *Server {
	t.Helper()
	if missing := Missing("Xvfb"); missing != nil {
		t.Skipf("not installed: %v", missing)
	}
	s, err := Start(t.Context(), 320, 200)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(s.Stop)
	return s
}

func TestScreen_readsAnEmptyScreen(t *testing.T) {
	screen, err := Connect(server(t).Display)
	if err != nil {
		t.Fatal(err)
	}
	defer screen.Close()
	if screen.Width != 320 || screen.Height != 200 {
		t.Errorf("screen is %d × %d, want 320 × 200", screen.Width, screen.Height)
	}
	img, err := screen.Settled(image.Rect(300, 190, 400, 300), time.Millisecond, time.Minute)
	if err != nil {
		t.Fatal(err)
	}
	if got, want := img.Bounds(), image.Rect(0, 0, 20, 10); got != want {
		t.Errorf("an area past the edge came as %v, want it cut to %v", got, want)
	}
	if c := img.RGBAAt(3, 3); c.R != 0 || c.G != 0 || c.B != 0 || c.A != 255 {
		t.Errorf("a pixel of the empty screen is %v, want black", c)
	}
}

func TestScreen_knowsTheKeys(t *testing.T) {
	screen, err := Connect(server(t).Display)
	if err != nil {
		t.Fatal(err)
	}
	defer screen.Close()
	for _, key := range []rune{'a', 'A', '7', '/', Tab, Return, BackSpace} {
		if err := screen.Press(key); err != nil {
			t.Error(err)
		}
	}
	if err := screen.Press('\U0001F600'); err == nil {
		t.Error("a character that is on no key was pressed")
	}
}

func TestProgram_isWaitedFor(t *testing.T) {
	p, err := run(exec.Command("sh", "-c", "echo said: one >&2; echo other >&2; echo said: two >&2; exit 3"), t.TempDir())
	if err != nil {
		t.Fatal(err)
	}
	var got []string
	for range 2 {
		line, err := p.Wait("said:", time.Minute)
		if err != nil {
			t.Fatal(err)
		}
		got = append(got, line)
	}
	if want := []string{"one", "two"}; !slices.Equal(got, want) {
		t.Errorf("waited for %q, want %q", got, want)
	}
	if line, err := p.Wait("said:", time.Minute); err == nil {
		t.Errorf("program had ended, and still said %q", line)
	}
	if err := p.Ended(time.Minute); err == nil {
		t.Error("exit code 3 was not told")
	}
}

func TestMissing_namesWhatIsNotInstalled(t *testing.T) {
	if got := Missing("sh", "no-such-program"); !slices.Equal(got, []string{"no-such-program"}) {
		t.Errorf("missing %q, want just no-such-program", got)
	}
}
