package store_test

import (
	"fmt"
	"os"
	"path/filepath"
	"runtime"
	"strconv"
	"testing"
	"time"

	"pressworth/catalog/store"
)

// soakDays says how many working days are gone through: 8 in the long form, 2 where nothing is said.
const soakDays = "PRESSWORTH_SOAK_DAYS"

// soakQuotes is how many quotes a day are made, revised, priced and accepted.
const soakQuotes = 40

// shopSize is how large the shop is in bytes, with what still lies in its log.
func shopSize(t *testing.T, path string) int {
	t.Helper()
	return wholeNumber(t, path, "SELECT page_count * page_size FROM pragma_page_count, pragma_page_size")
}

func quotesADay() int {
	if raced {
		return soakQuotes / 8
	}
	return soakQuotes
}

// load is what must not grow with the days.
type load struct {
	goroutines, handles int
	heap                uint64 // bytes in use after a collection
}

func (l load) String() string {
	return fmt.Sprintf("%d goroutines, %d handles, %.1f MB", l.goroutines, l.handles, float64(l.heap)/1e6)
}

func loadNow(t *testing.T) load {
	t.Helper()
	handles, err := os.ReadDir("/proc/self/fd")
	if err != nil {
		t.Fatal(err)
	}
	runtime.GC()
	runtime.GC()
	var m runtime.MemStats
	runtime.ReadMemStats(&m)
	return load{runtime.NumGoroutine(), len(handles), m.HeapAlloc}
}

// Working days one after the other on an open shop: quotes made, revised, priced and saved again, imports, searches and
// the day's backup. Memory, handles and goroutines stay as after the first day; the file grows by what was saved.
func TestSoak_daysLeaveNothingBehind(t *testing.T) {
	days := 2
	if raced {
		days = 1
	}
	if text := os.Getenv(soakDays); text != "" {
		n, err := strconv.Atoi(text)
		if err != nil {
			t.Fatal(err)
		}
		days = n
	}
	now := clock()
	folder := t.TempDir()
	path := filepath.Join(folder, "shop.db")
	s, err := store.Open(ctx, path, store.Options{Now: func() time.Time { return now }})
	if err != nil {
		t.Fatal(err)
	}
	defer s.Close()
	if err := s.Seed(ctx, demo(t)); err != nil {
		t.Fatal(err)
	}
	workDay(t, s, 0, folder) // fills caches
	first, size := loadNow(t), shopSize(t, path)
	t.Logf("after a day to begin with: %v, file %d KiB", first, size>>10)
	for day := 1; day <= days; day++ {
		now = now.AddDate(0, 0, 1)
		workDay(t, s, day, folder)
	}
	last, grown := loadNow(t), shopSize(t, path)
	each := float64(grown-size) / float64(days*quotesADay())
	t.Logf("after %d days more: %v, file %d KiB: %.0f bytes a quote with its share of prices", days, last, grown>>10, each)
	if last.goroutines > first.goroutines || last.handles > first.handles+2 || last.heap > first.heap+first.heap/2+4<<20 {
		t.Errorf("after the first day %v, after the last %v", first, last)
	}
	if each > 16<<10 {
		t.Errorf("the file grew by %.0f bytes a quote: more than was saved", each)
	}
}

// workDay is what a shop does in a day, without the pauses.
func workDay(t *testing.T, s *store.Store, day int, folder string) {
	t.Helper()
	begin := demo(t).Drafts[0]
	for i := range quotesADay() {
		d := begin
		d.ID, d.Number, d.Title = 0, "", fmt.Sprintf("Day %d, job %d", day, i)
		kept, err := s.SaveDraft(ctx, d, nil)
		if err != nil {
			t.Fatal(err)
		}
		kept.Title += ", revised"
		if kept, err = s.SaveDraft(ctx, kept, nil); err != nil {
			t.Fatal(err)
		}
		if found, err := s.Quotes(ctx, store.QuoteFilter{Words: fmt.Sprintf("day %d", day)}); err != nil || len(found) == 0 {
			t.Fatalf("day %d: %d quotes found, %v", day, len(found), err)
		}
		if _, err := s.Book(ctx, kept, kept.QuotedOn); err != nil {
			t.Fatal(err)
		}
		for _, words := range []string{"hood", "nav", "tee bl"} {
			if _, err := s.FindBlanks(ctx, words, 20); err != nil {
				t.Fatal(err)
			}
		}
	}
	list := fmt.Sprintf("Style,Name,Color,Size,Price\nSOAK1,Tee,Navy,M,%d.50\nSOAK2,Tee,Navy,L,%d.10\n", 3+day%5, 3+day%7)
	p, err := s.PlanImport(ctx, listOf(t, list), options("soak.csv", dayOf(day)))
	if err != nil {
		t.Fatal(err)
	}
	if _, err := s.Apply(ctx, p, nil); err != nil {
		t.Fatal(err)
	}
	if _, err := s.BackupDaily(ctx, filepath.Join(folder, "backups")); err != nil {
		t.Fatal(err)
	}
}

func dayOf(n int) string { return clock().AddDate(0, 0, n).Format(time.DateOnly) }
