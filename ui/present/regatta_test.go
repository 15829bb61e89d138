package present

import (
	"pressworth/quote"
	"pressworth/quote/money"
)

func ref(a money.Amount) *money.Amount { return &a }

// regatta is the outcome of the worked example (36 long sleeves and 10 caps) for a job of the same shape.
func regatta(j quote.Job) quote.Result {
	margin := "42.2"
	r := quote.Result{Currency: "USD", MarginPercent: &margin, LeftPerHour: ref(amount("213.42")), Hours: "2.25"}
	for _, g := range j.Garments {
		r.Garments = append(r.Garments, regattaLine(g))
		r.Pieces += r.Garments[len(r.Garments)-1].Pieces
	}
	if len(j.Garments) >= 2 {
		r.Groups = []quote.Group{{
			ID: "g1", Lines: []string{"g1", "g2"}, Pieces: 36, CostEach: amount("15.65"),
			UnitPrice: amount("27.25"), Computed: amount("27.25"), Basis: "563.44 / (1 − 45 %)",
		}}
	}
	if len(j.Garments) >= 3 {
		r.Groups = append(r.Groups, quote.Group{
			ID: "g3", Lines: []string{"g3"}, Pieces: 10, CostEach: amount("7.34"),
			UnitPrice: amount("12.50"), Computed: amount("12.50"),
		})
	}
	r.Price = quote.Totals{
		Goods: amount("1117.25"), Extras: amount("23.00"), Art: amount("25.00"), Subtotal: amount("1165.25"),
		Tax: amount("96.13"), Total: amount("1261.38"), Deposit: amount("630.69"),
	}
	r.Cost = regattaCost()
	r.Methods = regattaMethods(j)
	r.Plans = []quote.Plan{{Card: "sheets", Cost: amount("131.10"), Bound: amount("131.10"), Runs: []quote.Run{{
		Size: "13x9.5", Inks: 2, Sheets: 38, Width: "13", Height: "9.5", UsedPercent: "75.7",
		Pieces: []quote.PlacedPiece{{Placement: "p1", X: "0.25", Y: "0.25", W: "11", H: "8.5"}},
	}}}}
	r.Leftovers = []quote.Leftover{{Placement: "p1", Copies: 2}}
	r.Ladder = regattaLadder()
	return r
}

func regattaLine(g quote.Garment) quote.GarmentLine {
	l := quote.GarmentLine{ID: g.ID, UnitPrice: amount("27.25")}
	if g.Style == "CP-11" {
		l.UnitPrice = amount("12.50")
	}
	for _, s := range g.Sizes {
		l.Pieces += s.Qty
		p := quote.SizePrice{Size: s.Size, Qty: s.Qty, UnitPrice: l.UnitPrice}
		if s.Size == "2XL" {
			p.UnitPrice = amount("31.00")
		}
		l.Sizes = append(l.Sizes, p)
	}
	return l
}

func regattaCost() quote.Cost {
	line := func(kind, ref, a, basis string) quote.CostLine {
		return quote.CostLine{Kind: kind, Ref: ref, Amount: amount(a), Basis: basis}
	}
	return quote.Cost{Total: amount("636.85"), Lines: []quote.CostLine{
		line(quote.KindBlanks, "g1", "211.65", "27 × 6.85 + 3 × 8.90"), line(quote.KindBlanks, "g2", "47.95", "7 × 6.85"),
		line(quote.KindBlanks, "g3", "41.50", "10 × 4.15"), line(quote.KindSpoilage, "g3", "0.83", "2 % of 41.50"),
		line(quote.KindTransfers, "p1", "131.10", "38 × 3.45"), line(quote.KindTransfers, "p2", "59.28", "38 × 1.56"),
		line(quote.KindTransfers, "p3", "5.50", "11 × 0.50"), line(quote.KindExtra, "bag", "5.52", "46 × 0.12"),
		line(quote.KindFreight, "northgate", "12.50", "12.50"), line(quote.KindFreight, "kiln", "4.50", "half of 9.00"),
		line(quote.KindLabour, "", "44.88", "2.25 h × 19.98"), line(quote.KindOverhead, "", "49.69", "2.25 h × 22.12"),
		line(quote.KindPressWear, "", "1.95", "83 hits"), line(quote.KindArt, "", "20.00", "30 min × 40.00"),
	}}
}

func regattaMethods(j quote.Job) []quote.Method {
	var out []quote.Method
	for i, p := range j.Placements {
		m := quote.Method{Placement: p.ID, Card: "film", Transfers: amount([]string{"131.10", "59.28", "5.50"}[min(i, 2)])}
		switch i {
		case 0:
			m.Card, m.RunnerUp, m.Difference = "sheets", "film", ref(amount("62.18"))
		case 1:
			m.RunnerUp, m.Difference = "sheets", ref(amount("11.40"))
		}
		out = append(out, m)
	}
	return out
}

func regattaLadder() []quote.Step {
	step := func(n int, each, ls, cap, total string) quote.Step {
		return quote.Step{
			Pieces: n, Each: amount(each), Total: amount(total),
			Units: map[string]money.Amount{"g1": amount(ls), "g2": amount(ls), "g3": amount(cap)},
		}
	}
	return []quote.Step{
		step(12, "30.13", "34.75", "15.00", "424.88"), step(24, "27.47", "30.75", "13.50", "753.69"),
		step(48, "23.91", "27.00", "12.50", "1295.48"), step(72, "21.90", "24.25", "12.50", "1772.86"),
		step(144, "19.05", "20.75", "11.75", "3074.03"),
	}
}
