package quote_test

import (
	"testing"

	"pressworth/quote"
)

// taxed is a tax on goods and on what else is named.
func taxed(percent string, on ...string) func(*quote.Job) {
	return func(j *quote.Job) { j.Pricing.Tax = quote.Tax{Percent: num(percent), On: append(on, "goods")} }
}

func clothing(rule, from string) func(*quote.Job) {
	return func(j *quote.Job) { j.Pricing.Tax.Clothing = &quote.ClothingRule{Rule: rule, Amount: usd(from)} }
}

// Streamlined Sales and Use Tax Agreement, section 324, as enacted in R.I. Gen. Laws 44-18.1-25 and N.D.C.C. 57-39.4-25
// (seen): the tax is carried to the third decimal, and rounded up where that is more than 4. The vectors are computed.
func TestTax_streamlinedAgreement324(t *testing.T) {
	for _, c := range []struct {
		n                   int
		price, percent, tax string
	}{
		{1, "0.75", "6", "0.05"},
		{1, "0.74", "6", "0.04"},
		{1, "10.07", "7.25", "0.73"},
		{1, "0.28", "8.875", "0.02"},
		{1, "25.00", "6.25", "1.56"},
		{3, "1.49", "6.25", "0.28"},
	} {
		r := priced(t, pieces(c.n, "0.10", typed(c.price), taxed(c.percent)))
		same(t, c.price+" at "+c.percent, r.Price.Tax.String(), c.tax)
	}
}

// New York TB-ST-838, 2012 (seen): delivery is part of what is taxed: 499.95 + 30.00 + 20.00 make 549.95.
func TestTax_newYorkTBST838(t *testing.T) {
	r := priced(t, pieces(1, "1", typed("499.95"), taxed("8", "delivery", "extras"), func(j *quote.Job) {
		j.Pricing.DeliveryCharge = usd("30.00")
		j.Extras = []quote.Extra{{ID: "handling", Name: "Handling", PerOrder: true, Charge: usd("20.00"), Taxable: true}}
	}))
	same(t, "taxable", r.Price.Taxable.String(), "549.95")
	same(t, "tax at 8 %", r.Price.Tax.String(), "44.00")
}

// New York (second hand): a garment under 110 is exempt.
func TestTax_newYorkClothing(t *testing.T) {
	for price, tax := range map[string]string{"109.99": "0.00", "110.00": "4.40"} {
		same(t, price, priced(t, pieces(1, "1", typed(price), taxed("4"), clothing("exempt_below", "110.00"))).Price.Tax.String(), tax)
	}
}

// Massachusetts, state budget item 3.103, M.G.L. c. 64H s. 6(k) (seen): of a garment over 175 only the excess is taxed; the
// example of 200.00 is second hand. Two garments at 100.00 are taxed each by itself: not at all.
func TestTax_massachusettsClothing(t *testing.T) {
	one := priced(t, pieces(1, "1", typed("200.00"), taxed("6.25"), clothing("tax_excess", "175.00")))
	same(t, "200.00", one.Price.Tax.String(), "1.56")
	two := priced(t, pieces(2, "1", typed("100.00"), taxed("6.25"), clothing("tax_excess", "175.00")))
	same(t, "two at 100.00", two.Price.Tax.String(), "0.00")
}

// Texas 34 TAC 3.312(b)(2) (seen): the charge for printing is taxed whole; what the set-up cost is not taken off.
func TestTax_texasPrinting(t *testing.T) {
	c := quote.RateCard{
		ID: "c", Kind: quote.PieceCard, SetupPerDesign: usd("40"), SetupPerInk: usd("15"),
		Prices: []quote.PieceRow{{Upto: num("1"), Each: []quote.Break{{From: 1, Each: usd("2")}}}},
	}
	r := priced(t, pieces(10, "5", card(c), taxed("8.25")))
	same(t, "cost", r.Cost.Total.String(), "125.00") // 10 × (5 + 2) + 40 + 15
	same(t, "goods", r.Price.Goods.String(), "125.00")
	same(t, "taxable", r.Price.Taxable.String(), "125.00")
}
