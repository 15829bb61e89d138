package catalog

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"pressworth/quote"
	"pressworth/quote/money"
)

// PayWays are the ways of paying.
var PayWays = []string{"cash", "check", "card", "bank transfer", "other"}

// Payment is money received for a quote.
type Payment struct {
	ID      int64
	QuoteID int64
	On      string // 2006-01-02
	Way     string // one of PayWays
	Amount  money.Amount
	Note    string // never a card number
	Deposit bool   // the deposit, or a part of it
}

// Check gives what is wrong with a payment by itself; whether it is more than the balance is the book's to say.
func (p Payment) Check() []quote.Problem {
	var e entries
	e.day("on", p.On)
	if !slices.Contains(PayWays, p.Way) {
		e.say("way", "choose "+strings.Join(PayWays, ", "))
	}
	if p.Amount.Sign() <= 0 {
		e.say("amount", "enter an amount above 0, like 12.50")
	}
	if HoldsCardNumber(p.Note) || HoldsCardNumber(p.Way) {
		e.say("note", "looks like a card number: never keep one here")
	}
	return e.problems
}

// ErrPaidTooMuch is a payment above what is still owed; OverBalance says how much that is.
var ErrPaidTooMuch = errors.New("more than the balance")

// OverBalance is a payment that was refused because it is above what is still owed.
type OverBalance struct {
	Amount, Balance money.Amount
}

// Error names the balance.
func (o OverBalance) Error() string {
	return fmt.Sprintf("%s is more than the balance of %s", o.Amount, o.Balance)
}

// Is makes it ErrPaidTooMuch.
func (o OverBalance) Is(target error) bool { return target == ErrPaidTooMuch }

// Account is what has been paid for a quote and what is still owed.
type Account struct {
	Total    money.Amount // with tax, of the accepted revision, or of the draft where nothing has been accepted
	Deposit  money.Amount // asked for
	Paid     money.Amount
	Balance  money.Amount
	Payments []Payment // earliest first
}

// NewAccount adds payments up against a total.
func NewAccount(total, deposit money.Amount, payments []Payment) Account {
	a := Account{Total: total, Deposit: deposit, Payments: payments}
	for _, p := range payments {
		a.Paid = quote.Sum(a.Paid, p.Amount)
	}
	a.Balance = quote.Less(total, a.Paid)
	return a
}

// DepositDue is what of the deposit has not been paid; 0 where it has been.
func (a Account) DepositDue() money.Amount {
	if a.Paid.Cmp(a.Deposit) >= 0 {
		return money.Amount{}
	}
	return quote.Less(a.Deposit, a.Paid)
}

// HoldsCardNumber tells whether a text holds 13 to 19 digits, perhaps divided by spaces or dashes, whose check digit
// is right: payment cards are numbered so (ISO/IEC 7812-1, with the check digit of its annex B).
func HoldsCardNumber(text string) bool {
	var groups []string // of digits that stand together but for spaces and dashes
	open := false
	for _, r := range text + "." {
		switch {
		case r >= '0' && r <= '9':
			if !open {
				groups = append(groups, "")
			}
			groups[len(groups)-1] += string(r)
			open = true
		case r == ' ' || r == '-' || r == '\u00a0':
			open = false
		default:
			if cardAmong(groups) {
				return true
			}
			groups, open = nil, false
		}
	}
	return false
}

// cardAmong looks for a card number made of whole groups: it may stand beside others.
func cardAmong(groups []string) bool {
	for from := range groups {
		digits := ""
		for _, g := range groups[from:] {
			if digits += g; len(digits) > 19 {
				break
			}
			if len(digits) >= 13 && checks(digits) {
				return true
			}
		}
	}
	return false
}

// checks tells whether the last digit is the check digit of those before it.
func checks(digits string) bool {
	sum := 0
	for i := range len(digits) {
		d := int(digits[len(digits)-1-i] - '0')
		if i%2 == 1 {
			if d *= 2; d > 9 {
				d -= 9
			}
		}
		sum += d
	}
	return digits[0] != '0' && sum%10 == 0
}
