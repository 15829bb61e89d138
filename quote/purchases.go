package quote

import (
	"slices"
)

// purchases are what the job needs bought, by supplier in the job's order.
func (r *report) purchases() Purchases {
	return Purchases{Blanks: r.blankPurchases(), Transfers: r.transferPurchases()}
}

func (r *report) blankPurchases() []BlankPurchase {
	out, value := []BlankPurchase{}, []int64{}
	for l, g := range r.lines {
		if g.FromCustomer || r.own.bought[l] == 0 {
			continue
		}
		k := slices.IndexFunc(out, func(b BlankPurchase) bool {
			return b.Supplier == g.Supplier && b.Style == g.Style && b.Color == g.Color
		})
		if k < 0 {
			k = len(out)
			out = append(out, BlankPurchase{Supplier: g.Supplier, Style: g.Style, Name: g.Name, Color: g.Color, Sizes: []SizeCount{}})
			value = append(value, 0)
		}
		value[k] = add(value[k], r.own.blanks[l])
		for j, z := range g.Sizes {
			if n := r.own.qty[l][j] + r.own.spares[l][j]; n > 0 {
				out[k].count(z.Size, n)
			}
		}
	}
	for k := range out {
		out[k].Value = r.amount(value[k])
	}
	r.bySupplier(func(id func(string) int) {
		slices.SortStableFunc(out, func(a, b BlankPurchase) int { return id(a.Supplier) - id(b.Supplier) })
	})
	return out
}

func (b *BlankPurchase) count(size string, n int) {
	for k := range b.Sizes {
		if b.Sizes[k].Size == size {
			b.Sizes[k].Qty += n
			return
		}
	}
	b.Sizes = append(b.Sizes, SizeCount{size, n})
}

// bySupplier hands on the order of suppliers in the job.
func (r *report) bySupplier(sort func(id func(string) int)) {
	ids := supplierIDs(r.job)
	sort(func(id string) int { return slices.Index(ids, id) })
}

func (r *report) transferPurchases() []TransferPurchase {
	out := []TransferPurchase{}
	for c := range r.cards {
		cd := &r.cards[c]
		x := TransferPurchase{Supplier: cd.Supplier, Card: cd.ID, Items: []BoughtItem{}}
		value, used := int64(0), false
		for p, chosen := range r.own.choice {
			if chosen != c {
				continue
			}
			used = true
			value = add(value, r.own.transfers[p])
			if n := r.boughtPieces(c, p); n > 0 {
				x.Items = append(x.Items, BoughtItem{r.placements[p].ID, n})
			}
			x.Characters = append(x.Characters, r.characters(c, p)...)
		}
		for _, p := range r.own.plans {
			if p.card == c {
				x.Items = append(x.Items, r.boughtSheets(&p)...)
			}
		}
		if used {
			x.Value = r.amount(value)
			out = append(out, x)
		}
	}
	r.bySupplier(func(id func(string) int) {
		slices.SortStableFunc(out, func(a, b TransferPurchase) int { return id(a.Supplier) - id(b.Supplier) })
	})
	return out
}

// boughtPieces is the transfers of a placement bought on an area or piece card.
func (r *report) boughtPieces(c, p int) (n int) {
	if r.cards[c].sheets != nil || r.cards[c].roll != nil {
		return 0
	}
	for _, i := range r.placements[p].items {
		if r.own.need[i] > 0 {
			n += r.own.onPiece(c, i).bought
		}
	}
	return n
}

// boughtSheets are the sheets or lengths of a plan, by size.
func (r *report) boughtSheets(p *planned) (items []BoughtItem) {
	for _, run := range p.runs {
		what := ""
		if cd := &r.cards[p.card]; cd.roll != nil {
			what = cd.Lengths[run.Size].Length.String()
		} else {
			what = cd.RateCard.Sizes[run.Size].Name
		}
		if k := slices.IndexFunc(items, func(b BoughtItem) bool { return b.What == what }); k >= 0 {
			items[k].Qty += run.Sheets
		} else {
			items = append(items, BoughtItem{what, run.Sheets})
		}
	}
	return items
}

// leftovers are the copies bought beyond what is needed, by placement and variant.
func (r *report) leftovers() []Leftover {
	made := make([]int, len(r.items))
	for c := range r.cards {
		for p, chosen := range r.own.choice {
			if chosen == c && r.cards[c].sheets == nil && r.cards[c].roll == nil {
				for _, i := range r.placements[p].items {
					if r.own.need[i] > 0 {
						made[i] = r.own.onPiece(c, i).bought
					}
				}
			}
		}
	}
	for _, p := range r.own.plans {
		for _, run := range p.runs {
			for _, x := range run.Placed {
				made[x.Item] += run.Sheets
			}
		}
	}
	out := []Leftover{}
	for i, it := range r.items {
		c := r.own.choice[it.placement]
		if c < 0 {
			continue
		}
		if more := made[i] - r.own.needOn(&r.cards[c], i); more > 0 {
			out = append(out, Leftover{Placement: r.placements[it.placement].ID, Variant: it.variant, Copies: more})
		}
	}
	return out
}
