package main

import (
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"
)

// rule says what the packages at and below a folder must not import directly. A name ending in /... stands for all
// below it too; one without stands for itself alone.
type rule struct {
	under  string
	except []string // folders below that have a rule of their own
	deny   []string
	only   []string // if set, nothing but these may be imported
}

const (
	anyFyne = "fyne.io/..."
	anyUI   = "pressworth/ui/..."
	anyCmd  = "pressworth/cmd/..."
	store   = "pressworth/catalog/store/..."
	docs    = "pressworth/export/..."
	records = "pressworth/catalog/..."
	assets  = "pressworth/assets/..."
)

var (
	sql     = []string{"database/sql/...", "modernc.org/..."}
	network = []string{"net", "net/http/...", "net/rpc/...", "net/smtp", "net/textproto", "crypto/tls", "golang.org/x/net/..."}
)

// rules is who may import whom, the table of DEVELOPERS.md.
var rules = []rule{
	{under: "quote", deny: join(sql, network, []string{
		"os/...", "io/...", "log/...", "bufio", "embed", "syscall", anyFyne, anyUI, anyCmd, records, docs, assets,
	})},
	{under: "quote/nest", only: []string{"cmp", "context", "encoding/binary", "errors", "fmt", "iter", "maps", "math", "math/bits", "slices", "sort", "strconv", "strings", "pressworth/quote/nest/..."}},
	{under: "quote/calendar", only: []string{"cmp", "errors", "fmt", "slices", "strconv", "strings", "time", "pressworth/quote/calendar/..."}},
	{under: "catalog", except: []string{"catalog/store"}, deny: join(sql, network, []string{"os/...", "log/...", anyFyne, anyUI, anyCmd, docs, store})},
	{under: "catalog/store", deny: join(network, []string{anyFyne, anyUI, anyCmd, docs})},
	{under: "export", deny: join(sql, network, []string{anyFyne, anyUI, anyCmd, records})},
	{under: "ui", deny: join(sql, network, []string{"os/...", "syscall", "fyne.io/fyne/v2/app/...", store, docs, anyCmd})},
	{under: "ui/present", deny: []string{anyFyne}},
	{under: "assets", deny: []string{"pressworth/...", anyFyne}},
	{under: "cmd/pressworth", deny: network},
	{under: "cmd/dev", deny: []string{anyUI, records, docs, assets, "pressworth/quote/...", "pressworth/cmd/pressworth"}},
	{under: "cmd/internal", deny: []string{anyUI, records, docs, assets, "pressworth/quote/...", "pressworth/cmd/pressworth"}},
}

func join(lists ...[]string) []string { return slices.Concat(lists...) }

// broken tells which rule an import breaks, or nothing.
func broken(folder, path string) string {
	for _, r := range rules {
		if !at(folder, r.under) || slices.ContainsFunc(r.except, func(e string) bool { return at(folder, e) }) {
			continue
		}
		matches := func(pattern string) bool { return matchesPath(pattern, path) }
		if slices.ContainsFunc(r.deny, matches) {
			return fmt.Sprintf("%s must not import %s", r.under, path)
		}
		if r.only != nil && !slices.ContainsFunc(r.only, matches) {
			return fmt.Sprintf("%s may import only %s, not %s", r.under, strings.Join(r.only, ", "), path)
		}
	}
	return ""
}

func at(folder, top string) bool { return folder == top || strings.HasPrefix(folder, top+"/") }

func matchesPath(pattern, path string) bool {
	if top, ok := strings.CutSuffix(pattern, "/..."); ok {
		return at(path, top)
	}
	return path == pattern
}

// sources calls f for every Go file of the project that is no test, with its folder.
func sources(t *testing.T, f func(folder, file string, tree *ast.File)) {
	t.Helper()
	root, err := projectRoot()
	if err != nil {
		t.Fatal(err)
	}
	err = filepath.WalkDir(root, func(path string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			if err == nil && (d.Name() == ".git" || d.Name() == "out" || d.Name() == "testdata") {
				return filepath.SkipDir
			}
			return err
		}
		if !strings.HasSuffix(path, ".go") || strings.HasSuffix(path, "_test.go") {
			return nil
		}
		tree, err := parser.ParseFile(token.NewFileSet(), path, nil, parser.SkipObjectResolution)
		if err != nil {
			return err
		}
		folder, err := filepath.Rel(root, filepath.Dir(path))
		f(filepath.ToSlash(folder), filepath.Base(path), tree)
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
}

func TestLayout_importsGoOneWay(t *testing.T) {
	files := 0
	sources(t, func(folder, file string, tree *ast.File) {
		files++
		for _, i := range tree.Imports {
			path, err := strconv.Unquote(i.Path.Value)
			if err != nil {
				t.Fatal(err)
			}
			if wrong := broken(folder, path); wrong != "" {
				t.Errorf("%s/%s: %s", folder, file, wrong)
			}
			if path == "github.com/jung-kurt/gofpdf" && folder != "export" && !at(folder, "export") {
				t.Errorf("%s/%s: only export may import %s", folder, file, path)
			}
		}
	})
	if files < 10 {
		t.Errorf("looked at %d files: the walk does not find the project", files)
	}
}

// The rule must be able to fail: each of these is a fault it has to see, or an import it has to let through.
func TestLayout_ruleSeesAWrongImport(t *testing.T) {
	for _, c := range []struct {
		folder, path string
		wrong        bool
	}{
		{"quote", "os", true},
		{"quote", "os/exec", true},
		{"quote/jobfile", "io", true},
		{"quote/jobfile", "encoding/json", false},
		{"quote", "pressworth/catalog", true},
		{"quote", "pressworth/quote/gang", false},
		{"quote/nest", "encoding/json", true},
		{"quote/nest", "slices", false},
		{"quote/calendar", "time", false},
		{"quote/calendar", "pressworth/quote/money", true},
		{"catalog", "database/sql", true},
		{"catalog", "pressworth/catalog/store", true},
		{"catalog/store", "database/sql", false},
		{"catalog/store", "fyne.io/fyne/v2", true},
		{"export", "pressworth/catalog", true},
		{"ui/counter", "os", true},
		{"ui/counter", "pressworth/catalog", false},
		{"ui", "pressworth/catalog/store", true},
		{"ui", "fyne.io/fyne/v2/app", true},
		{"ui/present", "fyne.io/fyne/v2", true},
		{"ui/counter", "fyne.io/fyne/v2/widget", false},
		{"assets", "pressworth/quote", true},
		{"cmd/pressworth", "net/http", true},
		{"cmd/pressworth", "net/mail", false},
		{"cmd/dev", "pressworth/quote", true},
	} {
		if got := broken(c.folder, c.path) != ""; got != c.wrong {
			t.Errorf("%s importing %s: seen as wrong: %v, want %v", c.folder, c.path, got, c.wrong)
		}
	}
}

// clockCalls are the calls of package time that read the clock.
var clockCalls = []string{"Now", "Since", "Until", "After", "Tick", "NewTimer", "NewTicker", "Sleep", "AfterFunc"}

func readsClock(tree *ast.File) (calls []string) {
	ast.Inspect(tree, func(n ast.Node) bool {
		if s, ok := n.(*ast.SelectorExpr); ok {
			if x, ok := s.X.(*ast.Ident); ok && x.Name == "time" && slices.Contains(clockCalls, s.Sel.Name) {
				calls = append(calls, "time."+s.Sel.Name)
			}
		}
		return true
	})
	return calls
}

func TestLayout_engineReadsNoClock(t *testing.T) {
	sources(t, func(folder, file string, tree *ast.File) {
		if at(folder, "quote") {
			if calls := readsClock(tree); calls != nil {
				t.Errorf("%s/%s: the engine must not call %v", folder, file, calls)
			}
		}
	})
	tree, err := parser.ParseFile(token.NewFileSet(), "x.go", "package x\nimport \"time\"\nvar now = time.Now()", 0)
	if err != nil || len(readsClock(tree)) != 1 {
		t.Errorf("the rule does not see time.Now in a file that calls it: %v, %v", readsClock(tree), err)
	}
}

// One call of fyne.Do in the program: everything that comes back to the window comes back the same way.
func TestLayout_oneWayBackToTheWindow(t *testing.T) {
	var places []string
	sources(t, func(folder, file string, tree *ast.File) {
		ast.Inspect(tree, func(n ast.Node) bool {
			if s, ok := n.(*ast.SelectorExpr); ok {
				if x, ok := s.X.(*ast.Ident); ok && x.Name == "fyne" && (s.Sel.Name == "Do" || s.Sel.Name == "DoAndWait") {
					places = append(places, folder+"/"+file)
				}
			}
			return true
		})
	})
	if len(places) > 1 {
		t.Errorf("fyne.Do is called in %d places, want one: %v", len(places), places)
	}
}

func TestLayout_topLevelStaysAsItIs(t *testing.T) {
	root, err := projectRoot()
	if err != nil {
		t.Fatal(err)
	}
	allowed := []string{
		"cmd", "ui", "quote", "catalog", "export", "assets", "testdata", "out", "go.mod", "go.sum",
		"README.md", "DEVELOPERS.md", "FyneApp.toml", "LICENSE",
	}
	entries, err := os.ReadDir(root)
	if err != nil {
		t.Fatal(err)
	}
	for _, e := range entries {
		if !strings.HasPrefix(e.Name(), ".") && !slices.Contains(allowed, e.Name()) {
			t.Errorf("%s: nothing new at the top level", e.Name())
		}
	}
}
