package store_test

import (
	"bufio"
	"fmt"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"sort"
	"strconv"
	"strings"
	"testing"
	"time"

	"pressworth/catalog"
	"pressworth/catalog/pricefile"
	"pressworth/catalog/store"
)

const manyRows = 250_000

// shapes of a large list: a row a size of styles in ten colours and five sizes, or every row a style of its own.
var shapes = map[string]func(i int) (style, color, size int){
	"styles_in_10_colours_and_5_sizes": func(i int) (int, int, int) { return i / 50, i / 5 % 10, i % 5 },
	"a_style_a_row":                    func(i int) (int, int, int) { return i, i % 20, i % 5 },
}

// writeList writes a large list; of a part of its rows in a thousand the price is another one.
func writeList(tb testing.TB, path string, shape func(int) (int, int, int), otherPerMille int) {
	tb.Helper()
	adjectives := strings.Fields("Classic Heavy Soft Coastal Trail Studio Summit Harbour Meadow Prairie Lakeside Vintage Relaxed Fitted Active Weekend Canyon Orchard")
	nouns := []string{"Tee", "Long Sleeve", "Hoodie", "Crew Sweatshirt", "Polo", "Cap", "Tote", "Tank", "Jacket", "Vest"}
	mills := strings.Fields("Saltmarsh Oxbow Larkrise Quarry Dovecote Brackwater Fernhill Tidewater")
	colors := strings.Fields("White Black Navy Royal Red Maroon Forest Charcoal Sand Ash Gold Purple Teal Sage Brown Orange Kelly Slate Olive Stone")
	sizes := strings.Fields("S M L XL 2XL")
	f, err := os.Create(path)
	if err != nil {
		tb.Fatal(err)
	}
	w := bufio.NewWriter(f)
	fmt.Fprintln(w, "Style,Description,Mill,Category,Colour,Size,Piece,Case")
	r := rand.New(rand.NewPCG(7, 7))
	for i := range manyRows {
		style, color, size := shape(i)
		noun := nouns[style*7%len(nouns)]
		price := 250 + style*13%2700
		if r.IntN(1000) < otherPerMille {
			price += 35
		}
		fmt.Fprintf(w, "%c%06d,%s %s,%s,%s,%s,%s,%d.%02d,%d.%02d\n", 'A'+style%23, style, adjectives[style*5%len(adjectives)], noun, mills[style%len(mills)], noun,
			colors[color], sizes[size], price/100, price%100, price*93/10000, price*93/100%100)
	}
	if err := w.Flush(); err != nil {
		tb.Fatal(err)
	}
	if err := f.Close(); err != nil {
		tb.Fatal(err)
	}
}

// shellImport is how long the sqlite3 shell takes for a plain table, by the clock and in processor time; 0 where there is no such program.
func shellImport(tb testing.TB, list string) (clock, cpu time.Duration) {
	tb.Helper()
	if _, err := exec.LookPath("sqlite3"); err != nil {
		tb.Log("no sqlite3 shell to compare with")
		return 0, 0
	}
	db := filepath.Join(tb.TempDir(), "plain.db")
	start := time.Now()
	shell := exec.Command("sqlite3", db, ".mode csv", ".import "+list+" t")
	if out, err := shell.CombinedOutput(); err != nil {
		tb.Fatalf("%v: %s", err, out)
	}
	return time.Since(start), shell.ProcessState.UserTime() + shell.ProcessState.SystemTime()
}

func importFile(tb testing.TB, s *store.Store, list, from string) *store.ImportPlan {
	tb.Helper()
	f, err := os.Open(list)
	if err != nil {
		tb.Fatal(err)
	}
	defer f.Close()
	p, err := pricefile.Open(f)
	if err != nil {
		tb.Fatal(err)
	}
	plan, err := s.PlanImport(ctx, func(take func(catalog.PriceRow) error, refuse func(catalog.Refused)) error {
		return p.Rows(p.Guess(), take, refuse)
	}, options(list, from))
	if err != nil {
		tb.Fatal(err)
	}
	if _, err := s.Apply(ctx, plan, nil); err != nil {
		tb.Fatal(err)
	}
	return plan
}

// BenchmarkImport takes a list of 250 000 rows into an empty shop, then the same with 1 % of the prices changed. It reports the first against
// the sqlite3 shell's .import of the same file, and the second against the first.
func BenchmarkImport(b *testing.B) {
	for name, shape := range shapes {
		b.Run(name, func(b *testing.B) {
			dir := b.TempDir()
			list, later := filepath.Join(dir, "list.csv"), filepath.Join(dir, "later.csv")
			writeList(b, list, shape, 0)
			writeList(b, later, shape, 10)
			for b.Loop() {
				plain, plainCPU := shellImport(b, list)
				s := emptyShop(b)
				start, used := time.Now(), cpuTime()
				importFile(b, s, list, "2026-05-01")
				first, firstCPU := time.Since(start), cpuTime()-used
				start, used = time.Now(), cpuTime()
				importFile(b, s, later, "2026-06-01")
				second := time.Since(start)
				b.ReportMetric(first.Seconds(), "s-first")
				b.ReportMetric(second.Seconds()/first.Seconds(), "second/first")
				b.ReportMetric((cpuTime()-used).Seconds()/firstCPU.Seconds(), "second/first-cpu")
				b.ReportMetric(residentPeak(), "MB-resident")
				if plain > 0 {
					b.ReportMetric(plain.Seconds(), "s-shell")
					b.ReportMetric(first.Seconds()/plain.Seconds(), "first/shell")
					b.ReportMetric(firstCPU.Seconds()/plainCPU.Seconds(), "first/shell-cpu")
				}
			}
		})
	}
}

// BenchmarkFindBlanks types words letter by letter, 1 to 12, in a shop with 250 000 styles.
func BenchmarkFindBlanks(b *testing.B) {
	for name, shape := range shapes {
		b.Run(name, func(b *testing.B) {
			list := filepath.Join(b.TempDir(), "list.csv")
			writeList(b, list, shape, 0)
			s := emptyShop(b)
			importFile(b, s, list, "2026-05-01")
			var typed []string
			for _, word := range []string{
				"saltmarsh", "sweatshirt", "long sleeve", "navy", "charcoal", "hoodie", "relaxed tee", "b001", "c000123", "tidewater ca", "x", "q", "0012",
				"purple polo", "vintage tote", "s t", "j z", "weekend jack", "navy hoodie", "zzz",
			} {
				for n := 1; n <= min(len(word), 12); n++ {
					typed = append(typed, word[:n])
				}
			}
			var took, cpu []float64
			for b.Loop() {
				for _, words := range typed {
					start, used := time.Now(), cpuTime()
					if _, err := s.FindBlanks(ctx, words, 50); err != nil {
						b.Fatal(err)
					}
					took = append(took, float64(time.Since(start).Microseconds())/1000)
					cpu = append(cpu, float64((cpuTime()-used).Microseconds())/1000)
				}
			}
			sort.Float64s(took)
			sort.Float64s(cpu)
			b.ReportMetric(cpu[len(cpu)*95/100], "ms-p95-cpu")
			b.ReportMetric(took[len(took)/2], "ms-p50")
			b.ReportMetric(took[len(took)*95/100], "ms-p95")
			b.ReportMetric(took[len(took)-1], "ms-max")
			b.Log(strconv.Itoa(len(typed)) + " prefixes")
		})
	}
}

// BenchmarkList makes a list of 250 000 rows, and reads windows of 50 anywhere in it.
func BenchmarkList(b *testing.B) {
	list := filepath.Join(b.TempDir(), "list.csv")
	writeList(b, list, shapes["a_style_a_row"], 0)
	s := emptyShop(b)
	importFile(b, s, list, "2026-05-01")
	start := time.Now()
	l, err := s.List(ctx, catalog.StyleFilter{})
	if err != nil {
		b.Fatal(err)
	}
	b.Logf("%d rows listed in %v", l.Len(), time.Since(start))
	r := rand.New(rand.NewPCG(1, 2))
	for b.Loop() {
		if rows, err := l.Rows(ctx, r.IntN(l.Len()-50), 50); err != nil || len(rows) != 50 {
			b.Fatal(len(rows), err)
		}
	}
}
