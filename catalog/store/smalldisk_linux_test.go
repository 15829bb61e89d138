package store_test

import (
	"bytes"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"syscall"
	"testing"
)

// The disk is full in earnest: each chore runs on small file systems of its own, from one on which nothing more fits to
// one on which all does. Needs no tracer, only leave to mount a file system in a name space of its own.
func TestSmallDisk_aFullDiskLosesNothing(t *testing.T) {
	for name, c := range chores() {
		t.Run(name, func(t *testing.T) {
			begin := filepath.Join(t.TempDir(), "shop.db")
			c.shop(t, begin)
			size := int(fileSize(t, begin)+1023) / 1024
			full := 0
			spares := []int{4, 40, 72, 200, 500, 8000}
			if raced {
				spares = []int{40, 8000}
			}
			for _, spare := range spares {
				folder := t.TempDir()
				said := onSmallDisk(t, name, begin, folder, size+spare)
				what := fmt.Sprintf("%s with %d KiB free", name, spare)
				checkSaid(t, what, said)
				ended := strings.Contains(said, "done\n") || c.act == nil && strings.Contains(said, "open\n")
				if spare == 8000 && !ended {
					t.Errorf("%s: not done: %s", what, said)
				}
				if !ended {
					full++
				}
				checkAfter(t, what, c, filepath.Join(folder, "shop.db"), strings.Contains(said, "done\n"))
			}
			if full == 0 {
				t.Error("no disk was too small: the test says nothing")
			}
		})
	}
}

func fileSize(t *testing.T, path string) int64 {
	t.Helper()
	info, err := os.Stat(path)
	if err != nil {
		t.Fatal(err)
	}
	return info.Size()
}

// onSmallDisk runs a chore on a copy of a shop on a small file system, and brings what is left there into a folder.
func onSmallDisk(t *testing.T, name, begin, folder string, size int) (said string) {
	t.Helper()
	cmd := exec.CommandContext(t.Context(), os.Args[0])
	cmd.Env = append(os.Environ(), choreName+"="+name, choreShop+"="+begin, choreDisk+"="+strconv.Itoa(size), "PRESSWORTH_TEST_OUT="+folder)
	cmd.SysProcAttr = &syscall.SysProcAttr{
		Cloneflags:  syscall.CLONE_NEWUSER | syscall.CLONE_NEWNS,
		UidMappings: []syscall.SysProcIDMap{{ContainerID: 0, HostID: os.Getuid(), Size: 1}},
		GidMappings: []syscall.SysProcIDMap{{ContainerID: 0, HostID: os.Getgid(), Size: 1}},
	}
	var out bytes.Buffer
	cmd.Stdout, cmd.Stderr = &out, &out
	err := cmd.Run()
	var exit *exec.ExitError
	if err != nil && !errors.As(err, &exit) {
		t.Skipf("a name space of its own is not permitted here: %v", err)
	}
	if why, ok := strings.CutPrefix(out.String(), "no disk: "); ok {
		t.Skipf("mounting a file system is not permitted here: %s", why)
	}
	return out.String()
}

// choreOnDisk does a chore on a file system of so many KiB that only this process sees.
func choreOnDisk(c chore, begin, size string) error {
	disk, err := os.MkdirTemp("", "pressworth-disk-")
	if err != nil {
		return err
	}
	defer os.Remove(disk)
	if err := syscall.Mount("tmpfs", disk, "tmpfs", 0, "size="+size+"k"); err != nil {
		fmt.Println("no disk:", err)
		return nil
	}
	defer func() { _ = syscall.Unmount(disk, syscall.MNT_DETACH) }()
	path := filepath.Join(disk, "shop.db")
	content, err := os.ReadFile(begin)
	if err != nil {
		return err
	}
	if err := os.WriteFile(path, content, 0o600); err != nil {
		return err
	}
	failed := doChore(c, path)
	return errors.Join(failed, copyTree(disk, os.Getenv("PRESSWORTH_TEST_OUT")))
}

func copyTree(from, to string) error {
	return filepath.WalkDir(from, func(path string, d fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		inside, err := filepath.Rel(from, path)
		if err != nil || d.IsDir() {
			return errors.Join(err, os.MkdirAll(filepath.Join(to, inside), 0o700))
		}
		content, err := os.ReadFile(path)
		return errors.Join(err, os.WriteFile(filepath.Join(to, inside), content, 0o600))
	})
}
