package quote_test

import (
	"math/big"
	"regexp"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"pressworth/quote"
	"pressworth/quote/jobfile"
	"pressworth/quote/money"
)

var product = regexp.MustCompile(`^[0-9]+ × [0-9]+(\.[0-9]+)?$`)

// reckoned works out a formula of quantities and prices, like 39 × 4.35 + 4 × 6.10; false where it is none.
func reckoned(basis string) (*big.Rat, bool) {
	sum := new(big.Rat)
	for _, part := range strings.Split(basis, " + ") {
		if !product.MatchString(part) {
			return nil, false
		}
		n, price, _ := strings.Cut(part, " × ")
		x, _ := new(big.Rat).SetString(n)
		y, _ := new(big.Rat).SetString(price)
		sum.Add(sum, x.Mul(x, y))
	}
	return sum, true
}

// What stands under an amount has to come to the amount, and no amount stands without it.
func TestPrice_basisComesToTheAmount(t *testing.T) {
	looked := 0
	rapid.Check(t, func(t *rapid.T) {
		job, r := drawPriced(t)
		places := places(job)
		for _, l := range r.Cost.Lines {
			if l.Basis == "" {
				t.Fatalf("%s %s of %s has no basis", l.Kind, l.Ref, l.Amount)
			}
			if l.Kind != quote.KindBlanks || l.Amount.Sign() == 0 {
				continue
			}
			x, ok := reckoned(l.Basis)
			if !ok || x.FloatString(places) != l.Amount.String() {
				t.Fatalf("blanks of %s: %s, the basis is %q", l.Ref, l.Amount, l.Basis)
			}
			looked++
		}
		if x, ok := reckoned(r.Price.Basis["goods"]); r.Price.Goods.Sign() != 0 && (!ok || x.FloatString(places) != r.Price.Goods.String()) {
			t.Fatalf("goods: %s, the basis is %q", r.Price.Goods, r.Price.Basis["goods"])
		}
		for name, amount := range map[string]money.Amount{
			"rush": r.Price.Rush, "discount": r.Price.Discount, "tax": r.Price.Tax,
			"minimum_order": r.Price.MinimumOrder, "card_fee": r.Price.CardFee, "absorbed_fee": r.Price.AbsorbedFee, "deposit": r.Price.Deposit,
			"extras": r.Price.Extras, "art": r.Price.Art, "delivery": r.Price.Delivery, "subtotal": r.Price.Subtotal, "total": r.Price.Total,
		} {
			if amount.Sign() != 0 && r.Price.Basis[name] == "" {
				t.Fatalf("%s of %s has no basis", name, amount)
			}
		}
	})
	if looked == 0 {
		t.Error("no basis was looked at")
	}
}

func TestReckoned(t *testing.T) {
	for basis, want := range map[string]string{"39 × 4.35 + 4 × 6.10": "194.05", "1 × 2": "2.00", "39 × 4.35 + x": "", "": ""} {
		got := ""
		if x, ok := reckoned(basis); ok {
			got = x.FloatString(2)
		}
		same(t, basis, got, want)
	}
}

// What is bought is what is paid for, and enough.
func TestPrice_purchasesAreWhatIsPaidFor(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		job, r := drawPriced(t)
		var blanks, transfers, boughtBlanks, boughtTransfers []money.Amount
		for _, l := range r.Cost.Lines {
			switch l.Kind {
			case quote.KindBlanks:
				blanks = append(blanks, l.Amount)
			case quote.KindTransfers:
				transfers = append(transfers, l.Amount)
			}
		}
		bought, used := 0, 0
		for _, b := range r.Purchases.Blanks {
			boughtBlanks = append(boughtBlanks, b.Value)
			for _, s := range b.Sizes {
				bought += s.Qty
			}
		}
		for i, g := range r.Garments {
			for _, s := range g.Sizes {
				if !job.Garments[i].FromCustomer {
					used += s.Qty + s.Spares
				}
			}
		}
		if bought != used {
			t.Fatalf("%d blanks are bought, %d are used\n%s", bought, used, jobfile.Encode(job))
		}
		for _, x := range r.Purchases.Transfers {
			boughtTransfers = append(boughtTransfers, x.Value)
		}
		sumIs(t, "blanks bought", quote.Sum(blanks...), boughtBlanks...)
		sumIs(t, "transfers bought", quote.Sum(transfers...), boughtTransfers...)
		copies(t, job, r)
	})
}

// copies holds what stands on the layouts against what is needed.
func copies(t *rapid.T, job quote.Job, r quote.Result) {
	printed := map[string]int{}
	for _, p := range r.Plans {
		for _, run := range p.Runs {
			for _, x := range run.Pieces {
				printed[p.Card+" "+x.Placement] += run.Sheets
			}
		}
	}
	left := map[string]int{}
	for _, l := range r.Leftovers {
		left[l.Placement] += l.Copies
	}
	for _, m := range r.Methods {
		if n, planned := printed[m.Card+" "+m.Placement]; planned && n != m.Needed+left[m.Placement] {
			t.Fatalf("%s: %d copies are printed, %d needed and %d left over\n%s", m.Placement, n, m.Needed, left[m.Placement], jobfile.Encode(job))
		}
	}
}
