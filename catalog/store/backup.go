package store

import (
	"context"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"time"

	sqlite "modernc.org/sqlite"
)

// Backup is one backup file.
type Backup struct {
	Path    string
	Taken   time.Time
	Altered string // of one that was made just now: which frozen revisions, here as in the shop, do not match their SHA-256
}

const (
	backupStamp = "20060102-150405"
	backupMark  = "-backup-"
)

// Backup writes a verified copy of the shop into a folder and returns it. The copy is made beside its place and moved
// there only after its check, and after its rows were found to be those of the shop. Work may go on meanwhile.
func (s *Store) Backup(ctx context.Context, folder string) (b Backup, err error) {
	b.Taken = s.now()
	name := strings.TrimSuffix(filepath.Base(s.path), filepath.Ext(s.path))
	b.Path = filepath.Join(folder, name+backupMark+b.Taken.Format(backupStamp)+".db")
	altered, err := s.backup(ctx, folder, b.Path)
	if err != nil {
		return Backup{}, fmt.Errorf("backup of %s: %w", s.path, translate(err))
	}
	b.Altered = alteredWords(altered)
	return b, nil
}

// alteredWords says which frozen revisions are altered; nothing where all are as they were frozen.
func alteredWords(altered []string) string {
	switch n := len(altered); n {
	case 0:
		return ""
	case 1:
		return altered[0]
	default:
		return fmt.Sprintf("%s; so it is with %d more", altered[0], n-1)
	}
}

func (s *Store) backup(ctx context.Context, folder, path string) (altered []string, err error) {
	if err := os.MkdirAll(folder, 0o700); err != nil {
		return nil, err
	}
	if err := s.clearLeft(folder); err != nil {
		return nil, err
	}
	work, err := os.MkdirTemp(folder, ".backup-*") // mode 0700: nobody looks on
	if err != nil {
		return nil, err
	}
	defer os.RemoveAll(work)
	copied := filepath.Join(work, "shop.db")
	if altered, err = s.copyTo(ctx, copied); err != nil {
		return nil, err
	}
	if err := settle(copied); err != nil {
		return nil, err
	}
	return altered, os.Rename(copied, path)
}

// clearLeft removes what backups left in the folder that were cut off a day or longer ago.
func (s *Store) clearLeft(folder string) error {
	entries, err := os.ReadDir(folder)
	if err != nil {
		return err
	}
	for _, e := range entries {
		info, err := e.Info()
		if !strings.HasPrefix(e.Name(), ".backup-") || err != nil || s.now().Sub(info.ModTime()) < 24*time.Hour {
			continue
		}
		if err := os.RemoveAll(filepath.Join(folder, e.Name())); err != nil {
			return err
		}
	}
	return nil
}

// copyTo makes a copy of one moment of the shop, counts what the shop holds at that moment, and tells which of its
// revisions are not as they were frozen.
func (s *Store) copyTo(ctx context.Context, path string) (altered []string, err error) {
	db := connect(s.path)
	defer db.Close()
	conn, err := db.Conn(ctx)
	if err != nil {
		return nil, err
	}
	defer conn.Close()
	for _, step := range []string{"BEGIN DEFERRED", "SELECT count(*) FROM sqlite_schema"} { // the moment is that of the first reading
		if _, err := conn.ExecContext(ctx, step); err != nil {
			return nil, err
		}
	}
	if err := conn.Raw(func(c any) error { return copyPages(c, path) }); err != nil {
		return nil, err
	}
	here := Checked{Counts: map[string]int{}, sums: map[string]uint64{}}
	if err := here.count(ctx, conn); err != nil {
		return nil, err
	}
	return same(ctx, here, path)
}

// copyPages copies every page of the connection's file, as it sees it, with SQLite's own backup function.
func copyPages(conn any, path string) error {
	from, ok := conn.(interface {
		NewBackup(to string) (*sqlite.Backup, error)
	})
	if !ok {
		return errors.New("the database driver makes no backups")
	}
	b, err := from.NewBackup(fileURI(path))
	if err != nil {
		return err
	}
	for more := true; more && err == nil; {
		more, err = b.Step(-1)
	}
	return errors.Join(err, b.Finish())
}

// same wants a sound copy with the rows that were counted in the shop.
func same(ctx context.Context, here Checked, path string) (altered []string, err error) {
	there, err := Check(ctx, path)
	if err != nil {
		return nil, err
	}
	if there.Problems != nil {
		return nil, fmt.Errorf("%w: %s", ErrDamaged, there.Problems[0]) // the copy has the pages of the shop
	}
	if t := here.differs(there); t != "" {
		return nil, fmt.Errorf("the copy differs in %s", t)
	}
	return there.Altered, nil
}

// settle makes a file its owner's alone and waits until it is on the disk.
func settle(path string) error {
	f, err := os.OpenFile(path, os.O_RDWR, 0o600)
	if err != nil {
		return err
	}
	return errors.Join(f.Chmod(0o600), f.Sync(), f.Close())
}

// Backups are those in a folder, the newest first. A folder that is not there has none.
func Backups(folder string) (all []Backup, err error) {
	entries, err := os.ReadDir(folder)
	if err != nil && !errors.Is(err, fs.ErrNotExist) {
		return nil, err
	}
	for _, e := range entries {
		_, rest, ok := strings.Cut(e.Name(), backupMark)
		taken, err := time.ParseInLocation(backupStamp, strings.TrimSuffix(rest, ".db"), time.Local)
		if ok && err == nil && !e.IsDir() {
			all = append(all, Backup{Path: filepath.Join(folder, e.Name()), Taken: taken})
		}
	}
	slices.SortFunc(all, func(a, b Backup) int { return b.Taken.Compare(a.Taken) })
	return all, nil
}

// How many backups are kept: the newest of each of so many days, weeks and months that have one.
const (
	keptDays   = 7
	keptWeeks  = 8
	keptMonths = 12
)

// Expired are the backups that the rule does not keep; all are given with the newest first. The newest is always kept.
func Expired(all []Backup) (expired []Backup) {
	kept := map[string]bool{}
	for _, span := range []struct {
		of   func(time.Time) string
		most int
	}{
		{func(t time.Time) string { return t.Format(time.DateOnly) }, keptDays},
		{func(t time.Time) string { y, w := t.ISOWeek(); return fmt.Sprint(y, " week ", w) }, keptWeeks},
		{func(t time.Time) string { return t.Format("2006-01") }, keptMonths},
	} {
		seen := map[string]bool{}
		for _, b := range all {
			if k := span.of(b.Taken); !seen[k] && len(seen) < span.most {
				seen[k], kept[b.Path] = true, true
			}
		}
	}
	for _, b := range all {
		if !kept[b.Path] {
			expired = append(expired, b)
		}
	}
	return expired
}

// BackupDaily makes a backup if there is none of today, and then removes those that have expired. It returns the zero
// Backup where it made none.
func (s *Store) BackupDaily(ctx context.Context, folder string) (Backup, error) {
	all, err := Backups(folder)
	if err != nil {
		return Backup{}, err
	}
	if len(all) > 0 && all[0].Taken.Format(time.DateOnly) == s.today() {
		return Backup{}, nil
	}
	b, err := s.Backup(ctx, folder)
	if err != nil {
		return b, err
	}
	for _, old := range Expired(append([]Backup{b}, all...)) {
		if err := os.Remove(old.Path); err != nil {
			return b, err
		}
	}
	return b, nil
}
