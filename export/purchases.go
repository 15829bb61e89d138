package export

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"strings"
	"time"

	"pressworth/export/paper"
	"pressworth/quote"
	"pressworth/quote/cells"
)

// Purchases is what has to be ordered, by supplier, as a PDF.
func Purchases(job quote.Job, result quote.Result, date time.Time) ([]byte, error) {
	return render(job, "Purchases "+paperOf(job).Number, footText(job, "Purchases"), date, func(d *doc) { layPurchases(d, job, result, date) })
}

func layPurchases(d *doc, job quote.Job, result quote.Result, date time.Time) {
	d.letterhead(job, "Purchases", [2]string{"number", paperOf(job).Number}, [2]string{"date", day(date.Format(time.DateOnly))})
	for _, s := range suppliersOf(result) {
		d.heading(supplierName(job, s))
		d.blanksFrom(job, result, s)
		d.transfersFrom(job, result, s)
	}
}

// suppliersOf are the suppliers that something is bought from, in the order of the lists.
func suppliersOf(r quote.Result) (ids []string) {
	seen := map[string]bool{}
	add := func(id string) {
		if !seen[id] {
			seen[id] = true
			ids = append(ids, id)
		}
	}
	for _, b := range r.Purchases.Blanks {
		add(b.Supplier)
	}
	for _, t := range r.Purchases.Transfers {
		add(t.Supplier)
	}
	return ids
}

func (d *doc) blanksFrom(job quote.Job, r quote.Result, supplier string) {
	var t *table
	for _, b := range r.Purchases.Blanks {
		if b.Supplier != supplier {
			continue
		}
		if t == nil {
			t = d.table(columnSpec{title: "style", width: 70}, columnSpec{title: "garment", share: 3}, columnSpec{title: "colour", share: 2},
				columnSpec{title: "sizes, spares included", share: 5}, columnSpec{title: "pieces", width: 40, right: true}, columnSpec{title: "value", width: 64, right: true})
		}
		var sizes []string
		n := 0
		for _, s := range b.Sizes {
			sizes = append(sizes, fmt.Sprintf("%s %d", s.Size, s.Qty))
			n += s.Qty
		}
		t.row([]string{b.Style, b.Name, b.Color, strings.Join(sizes, " · "), fmt.Sprint(n), grouped(b.Value)},
			[]paper.Style{strong, body, body, body, body, body})
	}
	if t != nil {
		t.end()
	}
}

func (d *doc) transfersFrom(job quote.Job, r quote.Result, supplier string) {
	var t *table
	for _, x := range r.Purchases.Transfers {
		if x.Supplier != supplier {
			continue
		}
		if t == nil {
			t = d.table(columnSpec{title: "rate card", share: 3}, columnSpec{title: "to be ordered", share: 6}, columnSpec{title: "value", width: 64, right: true})
		}
		var items []string
		for _, i := range x.Items {
			items = append(items, fmt.Sprintf("%d × %s", i.Qty, boughtWord(job, x, i)))
		}
		items = append(items, charactersWord(job, x)...)
		t.row([]string{cardOf(job, x.Card).Name, strings.Join(items, ", "), grouped(x.Value)}, []paper.Style{strong, body, body})
	}
	if t != nil {
		t.end()
	}
}

// boughtWord is what one bought item is: a placement's transfers with their size, sheets of a size, or lengths.
func boughtWord(job quote.Job, x quote.TransferPurchase, i quote.BoughtItem) string {
	switch cardOf(job, x.Card).Kind {
	case quote.SheetCard:
		return "sheets " + i.What
	case quote.RollCard:
		return "length of " + i.What + unitWord(job)
	}
	p := placementOf(job, i.What)
	return fmt.Sprintf("%s %s, %s", lower(p.Name), inches(job, p.Width, p.Height), inkWords(p))
}

// charactersWord counts what is bought character by character: "number, one by one with spares: 0 × 4, 1 × 12".
func charactersWord(job quote.Job, x quote.TransferPurchase) (texts []string) {
	last := ""
	for _, c := range x.Characters {
		count := fmt.Sprintf("%s × %d", c.Character, c.Qty)
		if c.Placement != last {
			last = c.Placement
			count = lower(placementOf(job, c.Placement).Name) + ", one by one with spares: " + count
		}
		texts = append(texts, count)
	}
	return texts
}

// PurchasesCSV is the same as a table (RFC 4180).
func PurchasesCSV(job quote.Job, result quote.Result) ([]byte, error) {
	rows := [][]string{{"supplier", "what", "style or card", "name", "colour", "size", "quantity"}}
	for _, b := range result.Purchases.Blanks {
		for _, s := range b.Sizes {
			rows = append(rows, []string{supplierName(job, b.Supplier), "blank", b.Style, b.Name, b.Color, s.Size, fmt.Sprint(s.Qty)})
		}
	}
	for _, t := range result.Purchases.Transfers {
		for _, i := range t.Items {
			rows = append(rows, []string{supplierName(job, t.Supplier), "transfer", cardOf(job, t.Card).Name, boughtWord(job, t, i), "", "", fmt.Sprint(i.Qty)})
		}
		for _, c := range t.Characters {
			name := placementOf(job, c.Placement).Name + ", " + c.Character
			rows = append(rows, []string{supplierName(job, t.Supplier), "character", cardOf(job, t.Card).Name, name, "", "", fmt.Sprint(c.Qty)})
		}
	}
	return table4180(rows)
}

// CostCSV is the cost sheet as a table (RFC 4180).
func CostCSV(job quote.Job, result quote.Result) ([]byte, error) {
	rows := [][]string{{"kind", "for", "basis", "priced on", "amount", "currency"}}
	for _, l := range result.Cost.Lines {
		if !zero(l.Amount) {
			rows = append(rows, []string{l.Kind, refName(job, l), l.Basis, pricedOn(job, l.Entries), l.Amount.String(), job.Currency})
		}
	}
	rows = append(rows, []string{"total cost", "", "", "", result.Cost.Total.String(), job.Currency})
	p := result.Price
	for _, x := range []struct {
		name string
		a    fmt.Stringer
	}{{"subtotal", p.Subtotal}, {"tax", p.Tax}, {"card fee", p.CardFee}, {"absorbed fee", p.AbsorbedFee}, {"total", p.Total}} {
		rows = append(rows, []string{x.name, "", p.Basis[strings.ReplaceAll(x.name, " ", "_")], "", x.a.String(), job.Currency})
	}
	return table4180(rows)
}

func table4180(rows [][]string) ([]byte, error) {
	var b bytes.Buffer
	w := csv.NewWriter(&b)
	w.UseCRLF = true
	for _, r := range rows {
		for i, cell := range r {
			r[i] = cells.Harmless(cell)
		}
		if err := w.Write(r); err != nil {
			return nil, err
		}
	}
	w.Flush()
	return b.Bytes(), w.Error()
}
