package blanks

import (
	"context"
	"strings"
	"sync/atomic"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"pressworth/catalog"
	"pressworth/ui/form"
	"pressworth/ui/look"
	"pressworth/ui/parts"
)

// importPage takes a price file in three steps, each seen before the next: the file, its columns, what it changes.
type importPage struct {
	place   *Place
	imports Imports
	object  fyne.CanvasObject
	scroll  *container.Scroll
	steps   *fyne.Container // the sections of the steps so far
	form    *form.Form
	fault   *parts.Band
	busy    *parts.Band

	suppliers []catalog.Supplier
	sheet     Sheet
	compared  Compared
	turn      int // counts steps, to drop what comes too late
	stop      context.CancelFunc
	done      atomic.Int64 // per mille of what is being done
	report    *report
	next      []*parts.Button // what leads from one step to the next; only the last one is filled
}

func newImportPage(p *Place, i Imports) *importPage {
	g := &importPage{place: p, imports: i, fault: parts.NewBand(parts.Fault, ""), busy: parts.NewBand(parts.Note, ""), steps: parts.Column(look.SectionApart)}
	g.scroll = parts.NewPageScroll(parts.Column(look.SectionApart, g.steps, g.fault, g.busy))
	g.object = parts.PageInset(g.scroll)
	return g
}

// begin shows the first step.
func (g *importPage) begin() {
	g.turn++
	g.fault.SetText("")
	g.busy.SetText("")
	g.steps.Objects = nil
	turn := g.turn
	parts.Background(func() func() {
		all, err := g.imports.Suppliers(context.Background())
		return func() {
			if turn != g.turn {
				return
			}
			g.failed(err)
			g.suppliers = all
			g.fileStep()
		}
	})
}

func (g *importPage) failed(err error) {
	if err != nil {
		g.fault.SetText(strings.ToUpper(err.Error()[:1]) + err.Error()[1:])
		return
	}
	g.fault.SetText("")
}

// fileStep asks for the file, whose it is, and from when it holds.
func (g *importPage) fileStep() {
	g.form = form.New()
	var suppliers []parts.Option
	for _, s := range g.suppliers {
		suppliers = append(suppliers, parts.Option{Key: s.Key, Name: s.Name})
	}
	choose := parts.NewButton(parts.Quiet, "Choose …", "", g.choose)
	file := parts.Row(8, []parts.Track{parts.Share(1), parts.Fit()}, g.form.Text("file", "Price file", "CSV, TSV or XLSX"), parts.Column(17, parts.Gap(0, 0), choose))
	rest := parts.Fields(170, g.form.Choice("supplier", "Supplier", suppliers), g.form.Text("from", "Prices hold from", "like 2026-05-31"))
	section := parts.NewSection("Import prices", "1 · the file", file, rest,
		g.form.Check("whole", "the file lists everything this supplier has: what is not in it is gone"),
		parts.Row(8, nil, g.nextButton(0, "Look at the file", g.look)))
	section.Right.Add(parts.NewDeed(parts.Quiet, "Undo the last import", "", g.undo))
	section.Right.Add(parts.NewButton(parts.Quiet, "Back to the blanks", "Esc", g.place.closeImport))
	g.form.Set("from", g.place.now().Format(time.DateOnly))
	if len(g.suppliers) > 0 {
		g.form.Set("supplier", g.suppliers[0].Key)
	}
	g.steps.Objects = []fyne.CanvasObject{section}
	g.steps.Refresh()
	parts.Focus(g.form.Field("file"))
}

// nextButton makes the button of a step; those of the steps before become quiet.
func (g *importPage) nextButton(step int, word string, act func()) *parts.Button {
	b := parts.NewButton(parts.Filled, word, "", act)
	g.next = append(g.next[:step:step], b)
	for _, earlier := range g.next[:step] {
		earlier.SetKind(parts.Quiet)
	}
	return b
}

func (g *importPage) choose() {
	if g.place.Choose != nil {
		g.place.Choose(func(path string) { g.form.Set("file", path) })
	}
}

func (g *importPage) supplier() catalog.Supplier {
	for _, s := range g.suppliers {
		if s.Key == g.form.Get("supplier") {
			return s
		}
	}
	return catalog.Supplier{}
}

// look reads the beginning of the file and shows its columns.
func (g *importPage) look() {
	r := form.Reader{Get: g.form.Get}
	path, from := r.Need("file", "the path of the file"), r.Date("from")
	if from == "" && r.Text("from") == "" {
		r.Say("from", "say from which day the prices hold")
	}
	if g.supplier().ID == 0 {
		r.Say("supplier", "choose whose file it is")
	}
	g.form.Show(r.Problems)
	if len(r.Problems) > 0 {
		return
	}
	supplier := g.supplier().ID
	g.work("Looking at the file …", func(context.Context) (func(), error) {
		sheet, err := g.imports.Look(path, supplier)
		return func() {
			g.sheet = sheet
			g.columnStep()
		}, err
	})
}

// work does something long with a sentence and a way to stop it.
func (g *importPage) work(words string, do func(context.Context) (func(), error)) {
	g.turn++
	turn := g.turn
	ctx, cancel := context.WithCancel(context.Background())
	g.stop = cancel
	g.fault.SetText("")
	g.busy.SetText(words)
	g.busy.Offer("Stop", cancel)
	parts.Background(func() func() {
		then, err := do(ctx)
		return func() {
			cancel()
			if turn != g.turn {
				return
			}
			g.busy.SetText("")
			g.failed(err)
			if err == nil {
				then()
			}
		}
	})
}

// options are the choices of the first step.
func (g *importPage) options() catalog.ImportOptions {
	path := g.form.Get("file")
	return catalog.ImportOptions{
		SupplierID: g.supplier().ID, FileName: path[strings.LastIndexAny(path, `/\`)+1:],
		ValidFrom: g.form.Get("from"), Whole: g.form.Get("whole") != "",
	}
}

// compare reads the whole file and shows what it would change.
func (g *importPage) compare() {
	path, options, matching := g.form.Get("file"), g.options(), g.matching()
	g.work("Comparing with the catalog …", func(ctx context.Context) (func(), error) {
		compared, err := g.imports.Compare(ctx, path, matching, options)
		return func() {
			g.compared = compared
			g.reportStep()
		}, err
	})
}

// apply takes all of it or nothing, telling how far it is.
func (g *importPage) apply() {
	g.report.take.Disable()
	g.done.Store(0)
	g.tick(g.turn + 1)
	take := g.compared.Apply
	g.work("Taking the prices …", func(ctx context.Context) (func(), error) {
		err := take(ctx, func(done, of int) { g.done.Store(int64(done) * 1000 / int64(max(of, 1))) })
		return func() {
			g.place.closeImport()
			g.place.say("Prices taken from " + g.options().FileName + ".")
		}, err
	})
	if g.busy.Text() == "" && g.report != nil {
		g.report.take.Enable()
	}
}

// tick shows how far the work of a turn is, four times a second, for as long as it lasts.
func (g *importPage) tick(turn int) {
	if g.place.After == nil {
		return
	}
	moment := g.place.After(250 * time.Millisecond)
	parts.Background(func() func() {
		<-moment
		return func() {
			if turn != g.turn || g.busy.Text() == "" {
				return
			}
			g.busy.SetText("Taking the prices … " + percent(g.done.Load()))
			g.tick(turn)
		}
	})
}

func (g *importPage) undo() {
	g.work("Taking the last import back …", func(ctx context.Context) (func(), error) {
		name, err := g.imports.UndoLast(ctx)
		return func() { g.busy.SetText("Taken back: " + name + "."); g.busy.Offer("", nil) }, err
	})
}
