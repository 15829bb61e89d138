package store_test

import (
	"bufio"
	"context"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"pressworth/catalog/store"
)

const killedStyles = 9000

func killedList() string {
	var b strings.Builder
	b.WriteString("Style,Name,Color,Size,Price\n")
	for i := range killedStyles {
		fmt.Fprintf(&b, "K%05d,Tee,Navy,M,%d.50\n", i, 3+i%9)
	}
	return b.String()
}

// importAndTell imports and writes a line at every step.
func importAndTell(path string) error {
	s, err := store.Open(context.Background(), path, store.Options{Now: clock})
	if err != nil {
		return err
	}
	t := &testing.T{} // listOf wants one to fail on; this list cannot
	p, err := s.PlanImport(ctx, listOf(t, killedList()), options("killed.csv", day))
	if err != nil {
		return err
	}
	if _, err := s.Apply(ctx, p, func(done, total int) { fmt.Println(done, "of", total) }); err != nil {
		return err
	}
	fmt.Println("done")
	return s.Close()
}

// The program is killed after each step of an import: the shop holds all of the list or none of it.
func TestApply_killedAtAnyStepHoldsAllOrNone(t *testing.T) {
	whole := 0
	for step := 1; ; step++ {
		path := filepath.Join(t.TempDir(), "shop.db")
		prepare(t, path)
		finished := killAfter(t, path, step)
		s, err := store.Open(ctx, path, store.Options{Now: clock})
		if err != nil {
			t.Fatalf("killed after step %d: %v", step, err)
		}
		l, err := s.Styles(ctx, 0, killedStyles+1)
		if err != nil {
			t.Fatal(err)
		}
		found, err := s.FindBlanks(ctx, "k08999", 1)
		if err != nil {
			t.Fatal(err)
		}
		if len(l) != 0 && len(l) != killedStyles || (len(found) == 1) != (len(l) == killedStyles) {
			t.Errorf("killed after step %d: the shop holds %d of %d styles, the search finds %d", step, len(l), killedStyles, len(found))
		}
		if len(l) == killedStyles {
			whole++
		}
		if err := s.Close(); err != nil {
			t.Fatal(err)
		}
		if finished {
			break
		}
	}
	if whole == 0 {
		t.Error("no run took the whole list: the test says nothing")
	}
}

func prepare(t *testing.T, path string) {
	t.Helper()
	s := open(t, path)
	d := demo(t)
	d.Styles, d.Drafts = nil, nil
	if err := s.Seed(ctx, d); err != nil {
		t.Fatal(err)
	}
	if err := s.Close(); err != nil {
		t.Fatal(err)
	}
}

// killAfter runs an import and kills it once it has written so many lines; true where it came to its end before.
func killAfter(t *testing.T, path string, lines int) (finished bool) {
	t.Helper()
	cmd := exec.Command(os.Args[0])
	cmd.Env = append(os.Environ(), choreName+"=slow import", choreShop+"="+path)
	out, err := cmd.StdoutPipe()
	if err != nil {
		t.Fatal(err)
	}
	if err := cmd.Start(); err != nil {
		t.Fatal(err)
	}
	scan := bufio.NewScanner(out)
	for range lines {
		if !scan.Scan() {
			break
		}
		if strings.HasPrefix(scan.Text(), "error:") {
			t.Fatal(scan.Text())
		}
		finished = finished || scan.Text() == "done"
	}
	_ = cmd.Process.Kill()
	_ = cmd.Wait() // it was killed: that is its error
	return finished
}
