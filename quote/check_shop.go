package quote

import (
	"fmt"

	"pressworth/quote/money"
)

func (c *checker) shop() {
	s := c.job.Shop
	for _, f := range []struct {
		name string
		x    signed
	}{
		{"wage_per_hour", s.WagePerHour},
		{"burden_percent", s.BurdenPercent},
		{"allowance_percent", s.AllowancePercent},
		{"job_setup_min", s.JobSetupMin},
		{"design_setup_min", s.DesignSetupMin},
		{"changeover_min", s.ChangeoverMin},
		{"handling_s", s.Handling},
		{"overhead_per_month", s.OverheadPerMonth},
		{"hit_cost", s.HitCost},
		{"productive_hours_per_month", s.ProductiveHoursPerMonth},
		{"mixing_saves_at_least", s.MixingSavesAtLeast},
		{"power.watts", s.Power.Watts},
		{"power.duty_percent", s.Power.DutyPercent},
		{"power.per_kwh", s.Power.PerKWh},
	} {
		c.notNegative("shop."+f.name, f.x)
	}
	c.oneOf("shop.sheet_share", s.SheetShare, "", shareAlone, shareArea, shareCount, shareFirst)
	c.spares(s.Spares)
	monthly := s.OverheadPerMonth.Sign() > 0
	for i, m := range s.Equipment {
		c.machine(fmt.Sprintf("shop.equipment[%d]", i), m)
		monthly = monthly || m.LifeMonths > 0 && m.Cost.Cmp(m.Salvage) != 0
	}
	if monthly && s.ProductiveHoursPerMonth.Sign() == 0 {
		c.say("enter the hours a month that overhead is spread over", "shop.productive_hours_per_month")
	}
	c.notNegative("art.minutes", c.job.Art.Minutes)
	c.notNegative("art.per_hour", c.job.Art.PerHour)
	c.charge("art.charge", c.job.Art.Charge)
}

func (c *checker) machine(at string, m Machine) {
	c.notNegative(at+".cost", m.Cost)
	c.notNegative(at+".salvage", m.Salvage)
	if m.Salvage.Cmp(m.Cost) > 0 {
		c.say("enter at most what it cost", "%s.salvage", at)
	}
	if m.LifeMonths < 0 {
		c.say("enter 0 or more", "%s.life_months", at)
	}
	if m.LifeHits < 0 {
		c.say("enter 0 or more", "%s.life_hits", at)
	}
	switch {
	case m.LifeMonths > 0 && m.LifeHits > 0:
		c.say("a machine is worn by months or by hits: leave one out", "%s.life_hits", at)
	case m.LifeMonths == 0 && m.LifeHits == 0 && m.Cost.Cmp(m.Salvage) != 0:
		c.say("enter how many months it lasts, or how many hits", "%s.life_months", at)
	}
}

func (c *checker) spares(s Spares) {
	c.percentBelow("shop.spares.garment_percent", s.GarmentPercent, 1000, true)
	c.percentBelow("shop.spares.transfer_percent", s.TransferPercent, 1000, true)
	c.count("shop.spares.garment_at_least", s.GarmentAtLeast)
	c.count("shop.spares.garment_from", s.GarmentFrom)
	c.count("shop.spares.transfer_at_least", s.TransferAtLeast)
	c.count("shop.spares.transfer_from", s.TransferFrom)
	c.percentBelow("shop.spares.digit_percent", s.DigitPercent, 1000, true)
	c.count("shop.spares.digit_at_least", s.DigitAtLeast)
}

func (c *checker) pricing() {
	p := c.job.Pricing
	c.oneOf("pricing.basis", p.Basis, basisMargin, basisMarkup, basisSplit, basisHourly)
	c.oneOf("pricing.sizes", p.Sizes, "", sizesSpread, sizesUpcharge, sizesTable)
	c.target("pricing.percent", p.Percent)
	for i, b := range p.Percents {
		at := fmt.Sprintf("pricing.percents[%d]", i)
		if b.From < 1 {
			c.say("enter 1 or more", "%s.from", at)
		} else if i > 0 && b.From <= p.Percents[i-1].From {
			c.say("out of order: each starts at more than the one before", "%s.from", at)
		}
		c.target(at+".percent", b.Percent)
	}
	for size, a := range sortedAmounts(p.Upcharges) {
		c.charge("pricing.upcharges."+size, a)
	}
	c.notNegative("pricing.blank_percent", p.BlankPercent)
	c.notNegative("pricing.per_hour", p.PerHour)
	c.notNegative("pricing.delivery_cost", p.DeliveryCost)
	c.charge("pricing.delivery_charge", p.DeliveryCharge)
	c.charge("pricing.step", p.Step)
	c.charge("pricing.minimum_order", p.MinimumOrder)
	c.charge("pricing.discount", p.Discount)
	c.notNegative("pricing.rush_percent", p.RushPercent)
	c.percentBelow("pricing.discount_percent", p.DiscountPercent, 100, true)
	c.percentBelow("pricing.deposit_percent", p.DepositPercent, 100, true)
	c.percentBelow("pricing.floor_percent", p.FloorPercent, 100, false)
	c.percentBelow("pricing.card.percent", p.Card.Percent, 100, false)
	c.notNegative("pricing.card.fixed", p.Card.Fixed)
	c.notNegative("pricing.card.cap_percent", p.Card.CapPercent)
	c.tax(p.Tax)
}

// target checks a target percentage: a margin is below 100, a markup is not limited.
func (c *checker) target(path string, p money.Number) {
	if b := c.job.Pricing.Basis; b == basisMargin || b == basisSplit {
		c.percentBelow(path, p, 100, false)
		return
	}
	c.notNegative(path, p)
}

func (c *checker) tax(t Tax) {
	c.notNegative("pricing.tax.percent", t.Percent)
	for i, on := range t.On {
		c.oneOf(fmt.Sprintf("pricing.tax.on[%d]", i), on, "goods", "rush", "art", "delivery", "extras")
	}
	if r := t.Clothing; r != nil {
		c.oneOf("pricing.tax.clothing.rule", r.Rule, exemptBelow, taxExcess)
		c.notNegative("pricing.tax.clothing.amount", r.Amount)
	}
}

// Names of the rules that a job file may ask for.
const (
	shareAlone = "alone"
	shareArea  = "area"
	shareCount = "count"
	shareFirst = "first"

	basisMargin = "margin"
	basisMarkup = "markup"
	basisSplit  = "split"
	basisHourly = "hourly"

	sizesSpread   = "spread"
	sizesUpcharge = "upcharge"
	sizesTable    = "table"

	exemptBelow = "exempt_below"
	taxExcess   = "tax_excess"
)
