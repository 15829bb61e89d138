package quote

import (
	"fmt"
	"math/big"
	"slices"
	"strings"

	"pressworth/quote/money"
)

// product is a count times an amount, in words.
func product[N int | int64](n N, a fmt.Stringer) string { return fmt.Sprintf("%d × %s", n, a) }

// tally writes "27 × 6.85 + 3 × 8.90": counts of equal amounts put together, in the order they come.
type tally struct {
	amounts []string
	counts  []int
}

func (t *tally) add(n int, amount string) {
	if n == 0 {
		return
	}
	if k := slices.Index(t.amounts, amount); k >= 0 {
		t.counts[k] += n
		return
	}
	t.amounts, t.counts = append(t.amounts, amount), append(t.counts, n)
}

func (t *tally) String() string {
	parts := make([]string, len(t.amounts))
	for i, a := range t.amounts {
		parts[i] = fmt.Sprintf("%d × %s", t.counts[i], a)
	}
	return strings.Join(parts, " + ")
}

// basis is the formula behind a cost line with its own numbers, and the ids of the price entries it came from.
func (r *report) basis(e costEntry) (string, []string) {
	w, s := r.own, r.job.Shop
	switch e.kind {
	case KindBlanks:
		return r.blanksBasis(e.ref)
	case KindSpoilage:
		return r.spoilageBasis(e.ref), nil
	case KindTransfers:
		return r.transfersBasis(e.ref)
	case KindExtra:
		x := r.job.Extras[e.ref]
		if x.PerOrder {
			return x.Cost.String() + " an order", nil
		}
		return product(w.extraPieces(e.ref), x.Cost), nil
	case KindFreight:
		return r.freightBasis(e.ref, e.amount), nil
	case KindLabour:
		return fmt.Sprintf("%s h × %s%s", decimals(w.hours(), 4), s.WagePerHour, plusText(s.BurdenPercent)), nil
	case KindOverhead:
		return fmt.Sprintf("%s h × %s an hour", decimals(w.hours(), 4), r.overheadAnHour()), nil
	case KindPressWear:
		return r.wearBasis(), nil
	case KindArt:
		return fmt.Sprintf("%s min × %s an hour", r.job.Art.Minutes, r.job.Art.PerHour), nil
	}
	return r.job.Pricing.DeliveryCost.String(), nil
}

func plusText(p money.Number) string {
	if p.Sign() == 0 {
		return ""
	}
	return fmt.Sprintf(" + %s %%", p)
}

func (r *report) blanksBasis(l int) (string, []string) {
	if r.lines[l].FromCustomer {
		return "the customer's own garments", nil
	}
	var t tally
	var ids []string
	for j := range r.lines[l].Sizes {
		n := r.own.qty[l][j] + r.own.spares[l][j]
		b := r.own.breakOf[l][j]
		if n == 0 || b == nil {
			continue
		}
		t.add(n, b.Each.String())
		ids = entry(ids, b)
	}
	return t.String(), ids
}

// entry adds the id of a price entry, once.
func entry(ids []string, b *Break) []string {
	if b == nil || b.Info.EntryID == "" || slices.Contains(ids, b.Info.EntryID) {
		return ids
	}
	return append(ids, b.Info.EntryID)
}

func (r *report) spoilageBasis(l int) string {
	value := r.amount(r.own.blanks[l]).String()
	if r.lines[l].FromCustomer {
		value = product(r.own.lineQty[l], r.lines[l].ValueEach)
	}
	if !r.own.pressed[r.lines[l].group] || r.own.spared[r.lines[l].group] {
		return "spares are bought, or nothing is pressed"
	}
	return fmt.Sprintf("%s %% of %s", r.job.Shop.Spares.GarmentPercent, value)
}

func (r *report) transfersBasis(p int) (string, []string) {
	c := r.own.choice[p]
	cd := &r.cards[c]
	for i := range r.own.plans {
		if r.own.plans[i].card == c {
			return r.sharedBasis(i, p)
		}
	}
	var parts, ids []string
	for _, i := range r.placements[p].items {
		if r.own.need[i] == 0 {
			continue
		}
		x := r.own.onPiece(c, i)
		each := trim(x.each.rat(), r.places)
		text := fmt.Sprintf("%d × %s", x.bought, each)
		if cd.Kind == AreaCard {
			text += fmt.Sprintf(" (%s × %s at %s)", r.lengthOut(r.items[i].w), r.lengthOut(r.items[i].h), x.price.Each)
		}
		parts, ids = append(parts, text), entry(ids, x.price)
	}
	if setup := r.setupOn(cd, p); setup.Sign() > 0 {
		parts = append(parts, "setup "+trim(setup, r.places))
	}
	return strings.Join(parts, " + "), ids
}

// trim writes minor units as an amount with all its places, at least the currency's.
func trim(x *big.Rat, places int) string {
	more := 0
	for more < 8 && !times(x, rat(power10(more))).IsInt() {
		more++
	}
	return over(x, rat(power10(places))).FloatString(places + more)
}

// sharedBasis is a placement's part of the runs it stands on.
func (r *report) sharedBasis(plan, placement int) (string, []string) {
	p := &r.own.plans[plan]
	var parts, ids []string
	for k, items := range p.runItems {
		mine := int64(0)
		others := false
		for _, i := range items {
			if r.items[i].placement == placement {
				mine = add(mine, p.itemCost[i])
			} else {
				others = true
			}
		}
		if !slices.ContainsFunc(items, func(i int) bool { return r.items[i].placement == placement }) {
			continue
		}
		formula, entries := r.runFormula(plan, k)
		for _, id := range entries {
			ids = entry(ids, &Break{Info: Info{EntryID: id}})
		}
		if others {
			formula = fmt.Sprintf("%s of %s", r.amount(mine), formula)
		}
		parts = append(parts, formula)
	}
	return strings.Join(parts, " + "), ids
}

// runFormula is what the k-th run costs; a roll plan is one run.
func (r *report) runFormula(plan, k int) (string, []string) {
	p, runs := &r.own.plans[plan], r.plans[plan].Runs
	if r.cards[p.card].roll == nil {
		runs = runs[k : k+1]
	}
	var parts, ids []string
	for _, run := range runs {
		text := fmt.Sprintf("%d × %s (%s)", run.Sheets, run.Each, run.Size+run.Length)
		if run.Setup.Sign() > 0 {
			text += " + setup " + run.Setup.String()
		}
		parts = append(parts, text)
		if run.Entry != "" {
			ids = append(ids, run.Entry)
		}
	}
	if r.cards[p.card].roll != nil && p.setup > 0 {
		parts = append(parts, "setup "+r.amount(p.setup).String())
	}
	return strings.Join(parts, " + "), ids
}

func (r *report) freightBasis(s int, amount int64) string {
	x := r.job.Suppliers[s]
	switch {
	case amount == 0 && x.FreeFrom.Sign() > 0 && x.Freight.Sign() > 0:
		return fmt.Sprintf("free from %s, or nothing bought", x.FreeFrom)
	case x.SharePercent != nil && x.SharePercent.Cmp(money.Int(100)) != 0:
		return fmt.Sprintf("%s %% of %s", x.SharePercent, x.Freight)
	}
	return x.Freight.String()
}

// overheadAnHour is the overhead rate, rounded for reading.
func (r *report) overheadAnHour() money.Amount {
	perSecond := r.overhead.ra
	if r.allowed.Sign() == 0 {
		return r.amount(0)
	}
	return r.amount(cents(over(perSecond, r.allowed)))
}

func (r *report) wearBasis() string {
	w, p := r.own, r.job.Shop.Power
	kwh := times(w.hours(), p.Watts.Rat(), frac(1, 1000), percent(p.DutyPercent))
	text := fmt.Sprintf("%d × %s", w.hits, decimals(times(r.wear.ra, frac(1, power10(r.places))), 4))
	if kwh.Sign() > 0 {
		text += fmt.Sprintf(" + %s kWh × %s", decimals(kwh, 3), p.PerKWh)
	}
	return text
}

// unitBasis is how a group's price each comes about.
func (r *report) unitBasis(g int) string {
	if p, ok := r.typed(g); ok {
		return fmt.Sprintf("typed: %s", r.amount(p))
	}
	u, p := r.own.us[g], r.job.Pricing
	b := r.amount(u.recover).String()
	if u.extra.Sign() > 0 {
		b = fmt.Sprintf("(%s − %s for dearer sizes)", b, trim(u.extra, r.places))
	}
	pc := r.percentAt(r.own.pieces)
	var f string
	switch p.Basis {
	case basisMarkup:
		f = fmt.Sprintf("%s + %s %%", b, pc)
	case basisSplit:
		f = fmt.Sprintf("%s: blanks + %s %%, the rest / (1 − %s %%)", b, p.BlankPercent, pc)
	case basisHourly:
		f = fmt.Sprintf("%s less its time + hours × %s", b, p.PerHour)
	default:
		f = fmt.Sprintf("%s / (1 − %s %%)", b, pc)
	}
	f = fmt.Sprintf("%s / %d", f, u.pieces)
	if p.Step.Sign() > 0 {
		f += " up to " + p.Step.String()
	}
	if r.own.each[g] < u.each {
		f += fmt.Sprintf(", kept at %s: never dearer for taking more", r.amount(r.own.each[g]))
	}
	return f
}

// priceBasis are the formulas behind the totals, by the amount's name in the result.
func (r *report) priceBasis(p Pricing, t totals) map[string]string {
	var goods tally
	for l, g := range r.lines {
		for j, n := range r.own.qty[l] {
			goods.add(n, r.amount(add(r.own.each[g.group], r.addition(l, j))).String())
		}
	}
	a := func(x int64) string { return r.amount(x).String() }
	b := map[string]string{
		"goods":    goods.String(),
		"extras":   joinBases(r.extraLinesOut()),
		"art":      r.job.Art.Charge.String(),
		"delivery": p.DeliveryCharge.String(),
		"subtotal": r.added(t.goods, t.rush, -t.discount, t.minimum, t.extras, t.art, t.delivery),
		"tax":      fmt.Sprintf("%s %% of %s", p.Tax.Percent, trim(t.taxable, r.places)),
		"total":    r.added(t.subtotal, t.tax, t.cardFee),
		"deposit":  fmt.Sprintf("%s %% of %s", p.DepositPercent, a(t.total)),
		"balance":  fmt.Sprintf("%s − %s", a(t.total), a(t.deposit)),
	}
	if p.Tax.Exempt {
		b["tax"] = "exempt"
	}
	if t.rush > 0 {
		b["rush"] = fmt.Sprintf("%s %% of %s", p.RushPercent, a(t.goods))
	}
	if t.discount > 0 {
		b["discount"] = fmt.Sprintf("%s %% of %s", p.DiscountPercent, a(add(t.goods, t.rush)))
		if p.Discount.Sign() > 0 {
			b["discount"] += " + " + p.Discount.String()
		}
	}
	if t.minimum > 0 {
		b["minimum_order"] = fmt.Sprintf("%s less %s", p.MinimumOrder, a(t.goods+t.rush-t.discount))
	}
	if t.cardFee > 0 {
		b["card_fee"] = fmt.Sprintf("(%s + %s) / (1 − %s %%) − %s", a(t.subtotal+t.tax), p.Card.Fixed, p.Card.Percent, a(t.subtotal+t.tax))
	}
	if t.absorbed > 0 {
		b["absorbed_fee"] = fmt.Sprintf("%s %% of %s + %s", p.Card.Percent, a(t.total), p.Card.Fixed)
		if t.cardFee > 0 {
			b["absorbed_fee"] += " − " + a(t.cardFee)
		}
	}
	return b
}

// added writes a sum without its zeros.
func (r *report) added(terms ...int64) string {
	text := ""
	for _, t := range terms {
		switch {
		case t > 0 && text != "":
			text += " + "
		case t < 0:
			text += " − "
		}
		if t != 0 {
			text += r.amount(max(t, -t)).String()
		}
	}
	if text == "" {
		return r.amount(0).String()
	}
	return text
}

func joinBases(lines []ExtraLine) string {
	parts := make([]string, len(lines))
	for i, l := range lines {
		parts[i] = l.Basis
	}
	return strings.Join(parts, " + ")
}
