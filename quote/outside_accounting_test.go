package quote_test

import (
	"fmt"
	"math/big"
	"testing"

	"pressworth/quote"
	"pressworth/quote/money"
)

// Business-mathematics page of education-academia.github.io, "What is the total cost of an item" (seen): cost 5.00, 30 %
// markup 6.50, 30 % margin 7.14 (7.142857…). Cents go up here, so that the margin is looked at on a million times the cost.
func TestMarkupAndMargin_businessMathematicsPage(t *testing.T) {
	same(t, "markup", priced(t, pieces(1, "5.00", basis("markup", "30"))).Garments[0].UnitPrice.String(), "6.50")
	same(t, "margin", priced(t, pieces(1, "5000000.00", basis("margin", "30"))).Garments[0].UnitPrice.String(), "7142857.15")
}

// Managerial Accounting (Saylor edition), section 7.7 (seen): 60 and 10 % on cost make 66; 240 at a margin of 40 % leaves
// a cost of 144; 140 at 60 % one of 56.
func TestTargetCost_managerialAccounting77(t *testing.T) {
	same(t, "60 + 10 %", priced(t, pieces(1, "60", basis("markup", "10"))).Garments[0].UnitPrice.String(), "66.00")
	same(t, "144 at 40 %", priced(t, pieces(1, "144", basis("margin", "40"))).Garments[0].UnitPrice.String(), "240.00")
	same(t, "56 at 60 %", priced(t, pieces(1, "56", basis("margin", "60"))).Garments[0].UnitPrice.String(), "140.00")
}

// Algebra: markup = margin / (1 − margin). A third is written with eight places; to the cent it is the same.
func TestMarkupIsMargin_algebra(t *testing.T) {
	for margin, markup := range map[string]string{"20": "25", "50": "100", "33.33333333": "50"} {
		a := priced(t, pieces(7, "100.00", basis("margin", margin))).Garments[0].UnitPrice
		b := priced(t, pieces(7, "100.00", basis("markup", markup))).Garments[0].UnitPrice
		same(t, "margin "+margin+" as markup "+markup, a.String(), b.String())
	}
}

// Managerial Accounting (Saylor edition), 6.1 (seen): price 250, variable cost 150, fixed 50,000: nothing is left at 500,
// 30,000 at 800, 300 at 503.
func TestBreakEven_managerialAccounting61(t *testing.T) {
	for n, want := range map[int]int64{499: -100, 500: 0, 503: 300, 800: 30_000} {
		if got := profit(t, pieces(n, "150", typed("250"), fixed("50000"))); got != want*100 {
			t.Errorf("%d pieces: %d cents left, want %d", n, got, want*100)
		}
	}
}

// Same book, review 6.1 (seen): price 15, variable 2, fixed 5,000, target 7,000. The book prints 923, which falls 1 short;
// 924 is right.
func TestBreakEven_needsTheCeiling(t *testing.T) {
	for n, enough := range map[int]bool{923: false, 924: true} {
		if got := profit(t, pieces(n, "2", typed("15"), fixed("5000"))); got >= 700_000 != enough {
			t.Errorf("%d pieces leave %d cents; that they leave 7,000.00 should be %v", n, got, enough)
		}
	}
}

// Small Business Management in the 21st Century (Saylor), tables 10.1–10.2 (seen): two ways to make a product, fixed
// 33,000 + 9.25 each and 15,000 + 11.00 each, sold at 23.00. The quantity from which the first is better is computed.
func TestTwoMethods_smallBusinessManagement(t *testing.T) {
	way := func(id, once, each string) quote.RateCard {
		return quote.RateCard{
			ID: id, Kind: quote.PieceCard, SetupPerDesign: usd(once),
			Prices: []quote.PieceRow{{Upto: num("9"), Each: []quote.Break{{From: 1, Each: usd(each)}}}},
		}
	}
	a, b := card(way("a", "33000", "9.25")), card(way("b", "15000", "11.00"))
	wantA := map[int]int64{1000: -19_250, 3000: 8_250, 5000: 35_750, 7500: 70_125, 10_000: 104_500}
	wantB := map[int]int64{1000: -3_000, 3000: 21_000, 5000: 45_000, 7500: 75_000, 10_000: 105_000}
	for n := range wantA {
		if got := profit(t, pieces(n, "0", typed("23"), a)); got != wantA[n]*100 {
			t.Errorf("first way, %d pieces: %d cents, want %d", n, got, wantA[n]*100)
		}
		if got := profit(t, pieces(n, "0", typed("23"), b)); got != wantB[n]*100 {
			t.Errorf("second way, %d pieces: %d cents, want %d", n, got, wantB[n]*100)
		}
	}
	for n, want := range map[int]string{10_285: "b", 10_286: "a"} {
		same(t, fmt.Sprint("the way chosen at ", n), priced(t, pieces(n, "0", a, b)).Methods[0].Card, want)
	}
}

// Managerial Accounting, 7.6 (seen; a made-up firm): a special order of 200 shirts at 17, variable cost 13, design 600
// once: 200 are left. The price at which nothing is left is computed: 16.00.
func TestSpecialOrder_managerialAccounting76(t *testing.T) {
	if got := profit(t, pieces(200, "13", typed("17"), fixed("600"))); got != 20_000 {
		t.Errorf("%d cents left, want 20000", got)
	}
	same(t, "price at cost", priced(t, pieces(200, "13", fixed("600"))).Garments[0].UnitPrice.String(), "16.00")
}

// Same, 2.3 (seen): 1,140,000 over 38,000 hours are 30 an hour, 180 for 6 hours; 500,000 over 100,000 are 5, 10,000 for 2,000.
func TestOverheadRate_managerialAccounting23(t *testing.T) {
	for _, c := range []struct{ overhead, hours, minutes, want string }{
		{"1140000", "38000", "360", "180.00"}, {"500000", "100000", "120000", "10000.00"},
	} {
		r := priced(t, pieces(1, "0", func(j *quote.Job) {
			j.Shop = quote.Shop{OverheadPerMonth: usd(c.overhead), ProductiveHoursPerMonth: num(c.hours), JobSetupMin: num(c.minutes)}
		}))
		same(t, "overhead", costLine(r, quote.KindOverhead), c.want)
	}
}

// Same, 3.3 (seen): five activities, 7,000/1,100/50,000/200,000/12,000 of them for 5,000 units make 1,004 each, the rest
// for 1,000 units 2,980 each.
func TestActivityCosting_managerialAccounting33(t *testing.T) {
	rates := []int64{120, 800, 30, 6, 50}
	first, all := []int64{7_000, 1_100, 50_000, 200_000, 12_000}, []int64{10_000, 2_000, 90_000, 250_000, 20_000}
	r := priced(t, pieces(5000, "0", func(j *quote.Job) {
		second := j.Garments[0]
		second.ID, second.Style, second.Sizes = "h", "B", []quote.Size{{Size: "M", Qty: 1000, Each: second.Sizes[0].Each}}
		j.Garments = append(j.Garments, second)
		for i, rate := range rates {
			for on, times := range map[string]int64{"g": first[i], "h": all[i] - first[i]} {
				j.Extras = append(j.Extras, quote.Extra{
					ID: fmt.Sprint(on, i), Name: "Activity", PerOrder: true, On: []string{on},
					Cost: money.FromMinor(rate*times, 0),
				})
			}
		}
	}))
	same(t, "first product", r.Garments[0].CostEach.String(), "1004.00")
	same(t, "second product", r.Garments[1].CostEach.String(), "2980.00")
}

// worn is a job that takes so many hours, with overhead spread over a number of hours a month.
func worn(m quote.Machine, minutes, hoursPerMonth string) func(*quote.Job) {
	return func(j *quote.Job) {
		j.Shop = quote.Shop{Equipment: []quote.Machine{m}, JobSetupMin: num(minutes), ProductiveHoursPerMonth: num(hoursPerMonth)}
	}
}

// Financial Accounting (Saylor edition), ch. 10 (seen): 600,000, residual value 30,000, five years: 114,000 a year, here
// the twelve months' worth of hours.
func TestStraightLine_financialAccounting10(t *testing.T) {
	m := quote.Machine{Name: "Press", Cost: usd("600000"), Salvage: usd("30000"), LifeMonths: 60}
	same(t, "a year", costLine(priced(t, pieces(1, "0", worn(m, "72000", "100"))), quote.KindOverhead), "114000.00")
}

// Same (seen): 90,000 over 300,000 units are 0.30; 80,000, 120,000 and 100,000 of them wear 24,000, 36,000 and 30,000.
func TestUnitsOfProduction_financialAccounting10(t *testing.T) {
	film := quote.RateCard{ID: "film", Kind: quote.AreaCard, Rates: []quote.Break{{From: 1}}, Press: &quote.Press{}}
	for _, c := range []struct {
		pieces, hits int
		want         string
	}{{80_000, 1, "24000.00"}, {60_000, 2, "36000.00"}, {100_000, 1, "30000.00"}} {
		r := priced(t, pieces(c.pieces, "0", card(film), func(j *quote.Job) {
			j.Shop.Equipment = []quote.Machine{{Name: "Platen", Cost: usd("90000"), LifeHits: 300_000}}
			if c.hits == 2 {
				second := j.Placements[0]
				second.ID = "q"
				j.Placements = append(j.Placements, second)
			}
		}))
		same(t, fmt.Sprint(c.pieces*c.hits, " units"), costLine(r, quote.KindPressWear), c.want)
	}
}

// Iowa State University Extension A3-29, older edition (seen): list price 150,000, paid 130,000, 15 years of 400 hours,
// salvage 23 % of the list price, 34,500. What a year of hours wears is computed: 95,500 / 15.
func TestMachineRate_iowaStateA329(t *testing.T) {
	m := quote.Machine{Name: "Machine", Cost: usd("130000"), Salvage: usd("34500"), LifeMonths: 180}
	same(t, "a year", costLine(priced(t, pieces(1, "0", worn(m, "24000", "33.33333333"))), quote.KindOverhead), "6366.67")
}

// M. Birgen, Mathematics of Democracy, apportionment (seen).
func TestShare_mathematicsOfDemocracy(t *testing.T) {
	same(t, "160 parts", fmt.Sprint(money.Share(160, []int64{69_000, 267_000, 133_000, 331_000})), "[14 53 27 66]")
}

// For All Practical Purposes, 10th ed., ch. 14 (seen): the census of 1790 and 120 seats.
func TestShare_census1790(t *testing.T) {
	census := []int64{630_560, 475_327, 432_879, 353_523, 331_589, 278_514, 236_841, 206_236, 179_570, 141_822, 85_533, 70_835, 68_705, 68_446, 55_540}
	same(t, "120 seats", fmt.Sprint(money.Share(120, census)), "[21 16 14 12 11 9 8 7 6 5 3 2 2 2 2]")
}

// Snyder & Shen, Fundamentals of Supply Chain Theory, examples 3.5–3.7, as in the tests of stockpyl (seen): a price for all
// units by the quantity of an order, K once an order, i a year on what lies in store. An order is a job here: its blanks,
// K as freight, what its store costs as an extra; a year is demand/quantity of them. The first example is in cents for
// dollars, so that rounding the store's cost does not show.
func TestBreaksForAllUnits_snyderShen(t *testing.T) {
	for _, c := range []struct {
		demand  int64
		once    string
		rate    *big.Rat
		from    [3]int
		prices  [3]string
		tries   []int
		best    int
		yearly  string
		dollars int64
	}{
		{1300, "800", big.NewRat(30, 100), [3]int{1, 400, 800}, [3]string{"75", "72", "68"}, []int{304, 400, 800}, 800, "978.60", 100},
		{1000, "200", big.NewRat(20, 100), [3]int{1, 200, 500}, [3]string{"500", "475", "450"}, []int{63, 200, 500}, 500, "472900.00", 1},
	} {
		cheapest, at := new(big.Rat), 0
		for _, q := range c.tries {
			r := priced(t, orderOf(q, c.demand, c.once, c.rate, c.from, c.prices))
			yearly := new(big.Rat).Mul(r.Cost.Total.Rat(), big.NewRat(c.demand, int64(q)*c.dollars))
			if at == 0 || yearly.Cmp(cheapest) < 0 {
				cheapest, at = yearly, q
			}
		}
		same(t, "quantity", fmt.Sprint(at), fmt.Sprint(c.best))
		same(t, "cost a year", cheapest.FloatString(2), c.yearly)
	}
}

func orderOf(q int, demand int64, once string, rate *big.Rat, from [3]int, prices [3]string) quote.Job {
	return pieces(q, "0", func(j *quote.Job) {
		j.Suppliers[0].Freight = usd(once)
		each := new(big.Rat)
		j.Garments[0].Sizes[0].Each = nil
		for i := range from {
			b := quote.Break{From: from[i], Each: usd(prices[i])}
			j.Garments[0].Sizes[0].Each = append(j.Garments[0].Sizes[0].Each, b)
			if q >= from[i] {
				each = b.Each.Rat()
			}
		}
		stored := new(big.Rat).Mul(new(big.Rat).Mul(rate, each), big.NewRat(int64(q)*int64(q), 2*demand))
		fixed(stored.FloatString(2))(j)
	})
}

// Computed: at 10 below 500 and 9 from 500 on it pays to buy 500 from 451 on; at 450 both cost 4,500, and fewer are bought.
func TestBuyingUp_computed(t *testing.T) {
	c := quote.RateCard{ID: "c", Kind: quote.PieceCard, Prices: []quote.PieceRow{{
		Upto: num("1"),
		Each: []quote.Break{{From: 1, Each: usd("10")}, {From: 500, Each: usd("9")}},
	}}}
	for _, w := range []struct {
		need, bought int
		cost         string
	}{{449, 449, "4490.00"}, {450, 450, "4500.00"}, {451, 500, "4500.00"}, {500, 500, "4500.00"}, {501, 501, "4509.00"}} {
		r := priced(t, pieces(w.need, "0", card(c)))
		same(t, fmt.Sprint("cost of ", w.need), costLine(r, quote.KindTransfers), w.cost)
		same(t, fmt.Sprint("bought for ", w.need), fmt.Sprint(r.Purchases.Transfers[0].Items[0].Qty), fmt.Sprint(w.bought))
	}
}

// The printed answers of a public calculator (seen), by (net + fixed) / (1 − rate).
func TestCardGrossUp_publicCalculator(t *testing.T) {
	for _, c := range []struct{ net, percent, fixed, total string }{
		{"100", "2.9", "0.30", "103.30"}, {"500", "2.9", "0.30", "515.24"}, {"100", "3.5", "0", "103.63"},
	} {
		r := priced(t, pieces(1, "1", typed(c.net), func(j *quote.Job) {
			j.Pricing.Card = quote.CardFee{Percent: num(c.percent), Fixed: usd(c.fixed), PassOn: true}
		}))
		same(t, "total for "+c.net+" at "+c.percent, r.Price.Total.String(), c.total)
	}
}

// CICC data book 2.05, rounding half up (seen): 123.5, 123.454 and 123.455.
func TestCents_ciccDataBook(t *testing.T) {
	for _, c := range []struct {
		x    *big.Rat
		want int64
	}{{big.NewRat(1235, 10), 124}, {big.NewRat(123454, 10), 12345}, {big.NewRat(123455, 10), 12346}} {
		if got, ok := money.Cents(c.x); !ok || got != c.want {
			t.Errorf("%s: got %d, want %d", c.x.FloatString(1), got, c.want)
		}
	}
}
