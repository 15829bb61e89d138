package quote_test

import (
	"fmt"

	"pgregory.net/rapid"

	"pressworth/quote"
	"pressworth/quote/money"
)

// draw makes random jobs without mistakes.
type draw struct {
	*rapid.T
	places int  // of the currency
	mm     bool // lengths in millimetres
	fine   bool // prices of transfers may have parts of a cent
}

var sizeNames = []string{"YS", "S", "M", "L", "2XL"}

func drawJob(t *rapid.T) quote.Job {
	d := &draw{T: t, places: 2}
	job := quote.Job{Currency: "USD", Title: "Drawn"}
	if d.oneIn(8) {
		job.Currency, d.places = "JPY", 0
	}
	if d.oneIn(6) {
		job.Unit, d.mm = "mm", true
	}
	d.fine = d.oneIn(3)
	job.Suppliers = d.suppliers()
	for i := range d.upto(1, 4) {
		job.Garments = append(job.Garments, d.garment(i))
	}
	d.somePieces(&job)
	for i := range d.upto(1, 4) {
		job.RateCards = append(job.RateCards, d.card(i))
	}
	for i := range d.upto(0, 3) {
		job.Placements = append(job.Placements, d.placement(i, job))
	}
	for i := range d.upto(0, 2) {
		job.Extras = append(job.Extras, d.extra(i, job))
	}
	job.Shop = d.shop()
	job.Art = quote.Art{Minutes: d.number(0, 60, 0), PerHour: d.amount(0, 60), Charge: d.amount(0, 50)}
	job.Pricing = d.pricing()
	for range d.upto(0, 3) {
		job.Ladder = append(job.Ladder, d.upto(1, 80))
	}
	return job
}

// somePieces sees to it that one line has pieces.
func (d *draw) somePieces(job *quote.Job) {
	for _, g := range job.Garments {
		for _, s := range g.Sizes {
			if s.Qty > 0 {
				return
			}
		}
	}
	job.Garments[0].Sizes[0].Qty = 1
}

func (d *draw) upto(lo, hi int) int { return rapid.IntRange(lo, hi).Draw(d.T, "n") }
func (d *draw) oneIn(n int) bool    { return rapid.IntRange(1, n).Draw(d.T, "one in") == n }

func (d *draw) one(words ...string) string { return rapid.SampledFrom(words).Draw(d.T, "word") }

// decimal draws a number from lo to hi with the given places.
func (d *draw) decimal(lo, hi, places int) money.Amount {
	scale := 1
	for range places {
		scale *= 10
	}
	return money.FromMinor(int64(rapid.IntRange(lo*scale, hi*scale).Draw(d.T, "decimal")), places)
}

func (d *draw) number(lo, hi, places int) money.Number {
	return money.Number(d.decimal(lo, hi, places))
}

// amount draws whole minor units; a currency without any has figures a hundred times as large.
func (d *draw) amount(lo, hi int) money.Amount {
	if d.places == 0 {
		return d.decimal(lo*100, hi*100, 0)
	}
	return d.decimal(lo, hi, 2)
}

// price draws a price of transfers, which may have parts of a cent.
func (d *draw) price(lo, hi int) money.Amount {
	if d.fine && d.oneIn(2) {
		return d.decimal(lo, hi, 4)
	}
	return d.amount(lo, hi)
}

func (d *draw) percent(hi int) money.Number {
	if d.oneIn(3) {
		return money.Int(0)
	}
	return d.number(0, hi, d.upto(0, 2))
}

// length draws quarters of an inch, or millimetres about as long.
func (d *draw) length(lo, hi int) money.Number {
	n := rapid.IntRange(lo*4, hi*4).Draw(d.T, "quarters")
	if d.mm {
		return money.Int(int64(n * 6))
	}
	return money.Number(money.FromMinor(int64(n*25), 2))
}

func (d *draw) suppliers() []quote.Supplier {
	var all []quote.Supplier
	for _, id := range []string{"north", "kiln"} {
		s := quote.Supplier{ID: id, Name: id, Freight: d.amount(0, 20)}
		if d.oneIn(2) {
			s.FreeFrom = d.amount(0, 300)
		}
		if d.oneIn(2) {
			p := d.percent(100)
			s.SharePercent = &p
		}
		all = append(all, s)
	}
	return all
}

func (d *draw) breaks(n, lo, hi int, first int, price func(lo, hi int) money.Amount) []quote.Break {
	var all []quote.Break
	for range d.upto(1, n) {
		all = append(all, quote.Break{From: first, Each: price(lo, hi)})
		first += d.upto(1, 30)
	}
	return all
}

func (d *draw) garment(i int) quote.Garment {
	g := quote.Garment{
		ID: fmt.Sprint("g", i), Supplier: d.one("north", "kiln"), Style: d.one("A", "B"), Color: d.one("Navy", "White"),
		Shade: d.one("dark", "light"), NotClothing: d.oneIn(4),
	}
	g.Name = "Garment " + g.ID
	if d.oneIn(3) {
		g.Tags = []string{d.one("cotton", "nylon")}
	}
	if d.oneIn(4) {
		g.FromCustomer, g.ValueEach = true, d.amount(0, 30)
	}
	if d.oneIn(3) {
		g.Group = d.one("one", "two") + fmt.Sprint(g.FromCustomer)
	}
	if d.oneIn(3) {
		h := d.number(0, 90, 0)
		g.Handling = &h
	}
	if d.oneIn(5) {
		p := d.amount(0, 40)
		g.Price = &p
	}
	for _, size := range sizeNames {
		if d.oneIn(2) || len(g.Sizes) == 0 && size == "2XL" {
			s := quote.Size{Size: size, Qty: d.upto(0, 20)}
			if !g.FromCustomer {
				s.Each = d.breaks(2, 1, 9, 1, d.amount)
			}
			g.Sizes = append(g.Sizes, s)
		}
	}
	return g
}

func (d *draw) on(job quote.Job) []string {
	if d.oneIn(2) {
		return nil
	}
	var ids []string
	for _, g := range job.Garments {
		if d.oneIn(2) {
			ids = append(ids, g.ID)
		}
	}
	if len(ids) == 0 {
		ids = []string{job.Garments[0].ID}
	}
	return ids
}

func (d *draw) placement(i int, job quote.Job) quote.Placement {
	p := quote.Placement{ID: fmt.Sprint("p", i), Width: d.length(1, 11), Height: d.length(1, 11), On: d.on(job), NoTurn: d.oneIn(4)}
	p.Name = "Placement " + p.ID
	switch d.upto(1, 4) {
	case 1:
		p.FullColor = true
	case 2:
		p.InkCount = d.upto(1, 4)
	default:
		p.Inks = append(p.Inks, rapid.SliceOfNDistinct(rapid.SampledFrom([]string{"white", "gold", "red"}), 1, 3, rapid.ID).Draw(d.T, "inks")...)
	}
	if d.oneIn(2) {
		p.Stitches = d.number(1, 12, 1)
	}
	if d.oneIn(4) {
		p.Method = job.RateCards[d.upto(0, len(job.RateCards)-1)].ID
	}
	sizes := rapid.Permutation(sizeNames).Draw(d.T, "sizes")
	for range d.upto(0, 2) {
		if d.oneIn(2) {
			n := d.upto(1, 2)
			p.Variants = append(p.Variants, quote.Variant{Sizes: sizes[:n], Width: d.length(1, 9), Height: d.length(1, 9)})
			sizes = sizes[n:]
		}
	}
	return p
}

func (d *draw) extra(i int, job quote.Job) quote.Extra {
	return quote.Extra{
		ID: fmt.Sprint("e", i), Name: "Extra", PerOrder: d.oneIn(2), On: d.on(job), Cost: d.price(0, 3), Seconds: d.number(0, 60, 0),
		Charge: d.amount(0, 4), Taxable: d.oneIn(2),
	}
}

func (d *draw) card(i int) quote.RateCard {
	c := quote.RateCard{ID: fmt.Sprint("c", i), Name: "Card", Supplier: d.one("north", "kiln"), SetupPerDesign: d.amount(0, 20), SetupPerInk: d.amount(0, 9)}
	if !d.oneIn(4) {
		c.Press = &quote.Press{
			Prep: d.number(0, 20, 0), Place: d.number(1, 20, 1), Dwell: d.number(1, 15, 0), Peel: d.number(0, 9, 0),
			Second: d.number(0, 9, 0), PrepMin: d.number(0, 5, 1),
		}
	}
	if i == 0 { // takes everything
		c.Kind, c.FullColor, c.MinimumEach = quote.AreaCard, true, d.amount(0, 1)
		c.Rates = d.breaks(3, 0, 1, 1, func(lo, hi int) money.Amount { return d.decimal(lo, hi, 3) })
		return c
	}
	c.MaxInks, c.FullColor = d.upto(0, 4), d.oneIn(2)
	if d.oneIn(4) {
		c.Shades = []string{d.one("dark", "light")}
	}
	if d.oneIn(4) {
		c.NotOn = []string{"nylon"}
	}
	switch d.upto(1, 4) {
	case 1:
		d.areaCard(&c)
	case 2:
		d.pieceCard(&c)
	case 3:
		d.sheetCard(&c)
	default:
		d.rollCard(&c)
	}
	return c
}

func (d *draw) limits(c *quote.RateCard) {
	c.MinimumEach = d.amount(0, 1)
	if d.oneIn(2) {
		c.Minimum = d.upto(0, 15)
	}
	if d.oneIn(3) {
		c.MaxWidth = d.length(5, 11)
	}
	if d.oneIn(3) {
		c.MaxHeight = d.length(5, 11)
	}
}

func (d *draw) areaCard(c *quote.RateCard) {
	c.Kind = quote.AreaCard
	d.limits(c)
	c.Rates = d.breaks(3, 0, 1, d.upto(1, 3), func(lo, hi int) money.Amount { return d.decimal(lo, hi, 3) })
}

func (d *draw) pieceCard(c *quote.RateCard) {
	c.Kind, c.By = quote.PieceCard, d.one("", "inks", "stitches", "area")
	d.limits(c)
	upto := 0
	for range d.upto(1, 3) {
		upto += map[string]int{"stitches": 5, "area": 30}[c.By] + d.upto(1, 2)
		c.Prices = append(c.Prices, quote.PieceRow{Upto: money.Int(int64(upto)), Each: d.breaks(3, 0, 6, d.upto(1, 3), d.price)})
	}
	if d.oneIn(2) && (c.By == "" || c.By == "inks") {
		c.FullColorEach = d.breaks(2, 1, 6, 1, d.price)
	}
}

func (d *draw) sheetCard(c *quote.RateCard) {
	c.Kind, c.FullColor = quote.SheetCard, false
	for i := range d.upto(1, 2) {
		s := quote.SheetSize{
			Name: fmt.Sprint("s", i), Width: d.length(8, 14), Height: d.length(9, 20), Edge: d.length(0, 1), Gap: d.length(0, 1),
			Minimum: d.upto(0, 12),
		}
		inks := 0
		for range d.upto(1, 3) {
			inks += d.upto(1, 2)
			s.Prices = append(s.Prices, quote.InkRow{Inks: inks, Each: d.breaks(3, 1, 9, d.upto(1, 10), d.price)})
		}
		c.Sizes = append(c.Sizes, s)
	}
}

func (d *draw) rollCard(c *quote.RateCard) {
	c.Kind, c.Width, c.Edge, c.Gap = quote.RollCard, d.length(11, 24), d.length(0, 1), d.length(0, 1)
	for i := range d.upto(1, 3) { // no length twice
		c.Lengths = append(c.Lengths, quote.RollLength{Length: d.length(10+20*i, 25+20*i), Each: d.price(4, 30)})
	}
}

func (d *draw) shop() quote.Shop {
	s := quote.Shop{
		WagePerHour: d.amount(0, 40), BurdenPercent: d.percent(30), AllowancePercent: d.percent(30), JobSetupMin: d.number(0, 30, 0),
		DesignSetupMin: d.number(0, 5, 1), ChangeoverMin: d.number(0, 10, 0), Handling: d.number(0, 60, 0), OverheadPerMonth: d.amount(0, 3000),
		ProductiveHoursPerMonth: d.number(1, 160, 0), HitCost: d.decimal(0, 1, 3), SheetShare: d.one("", "alone", "area", "count", "first"),
	}
	s.Power = quote.Power{Watts: d.number(0, 2000, 0), DutyPercent: d.percent(100), PerKWh: d.decimal(0, 1, 2)}
	s.Spares = quote.Spares{
		GarmentPercent: d.percent(9), GarmentAtLeast: d.upto(0, 3), GarmentFrom: d.upto(0, 30),
		TransferPercent: d.percent(9), TransferAtLeast: d.upto(0, 3), TransferFrom: d.upto(0, 30),
	}
	if d.oneIn(2) {
		s.MixingSavesAtLeast = d.amount(0, 20)
	}
	for i := range d.upto(0, 2) {
		m := quote.Machine{Name: fmt.Sprint("m", i), Cost: d.amount(100, 2000), Salvage: d.amount(0, 99)}
		if d.oneIn(2) {
			m.LifeMonths = d.upto(1, 60)
		} else {
			m.LifeHits = d.upto(1, 9000)
		}
		s.Equipment = append(s.Equipment, m)
	}
	return s
}

func (d *draw) pricing() quote.Pricing {
	p := quote.Pricing{
		Basis: d.one("margin", "markup", "split", "hourly"), Percent: d.percent(80), BlankPercent: d.percent(60),
		PerHour: d.amount(0, 90), Sizes: d.one("", "spread", "upcharge", "table"), MayRise: d.oneIn(3), FloorPercent: d.percent(40),
	}
	p.Step = rapid.SampledFrom([]money.Amount{{}, d.amount(0, 1)}).Draw(d.T, "step")
	from := 1
	for range d.upto(0, 2) {
		p.Percents = append(p.Percents, quote.PercentBreak{From: from, Percent: d.percent(80)})
		from += d.upto(1, 40)
	}
	if d.oneIn(2) {
		p.Upcharges = map[string]money.Amount{"2XL": d.amount(0, 4), "YS": d.amount(0, 2)}
	}
	if d.oneIn(2) {
		p.MinimumOrder = d.amount(0, 400)
	}
	if d.oneIn(2) {
		p.DeliveryCost, p.DeliveryCharge = d.amount(0, 20), d.amount(0, 20)
	}
	if d.oneIn(2) {
		p.RushPercent, p.DiscountPercent, p.Discount = d.percent(50), d.percent(30), d.amount(0, 30)
	}
	p.Tax = quote.Tax{Percent: d.number(0, 10, 3), On: []string{"goods", "rush", "art", "delivery", "extras"}[d.upto(0, 3):d.upto(3, 5)], Exempt: d.oneIn(6)}
	if d.oneIn(3) {
		p.Tax.Clothing = &quote.ClothingRule{Rule: d.one("exempt_below", "tax_excess"), Amount: d.amount(0, 30)}
	}
	if d.oneIn(2) {
		p.Card = quote.CardFee{Percent: d.number(0, 5, 2), Fixed: d.amount(0, 1), PassOn: d.oneIn(2), CapPercent: d.percent(4)}
	}
	p.DepositPercent = d.percent(100)
	return p
}
