package jobfile

import (
	"pressworth/quote"
	"pressworth/quote/jobfile/strict"
)

func shopFields(f strict.Fields, s *quote.Shop) {
	f.Amount("wage_per_hour", &s.WagePerHour)
	f.Number("burden_percent", &s.BurdenPercent)
	f.Number("allowance_percent", &s.AllowancePercent)
	f.Number("job_setup_min", &s.JobSetupMin)
	f.Number("design_setup_min", &s.DesignSetupMin)
	f.Number("changeover_min", &s.ChangeoverMin)
	f.Number("handling_s", &s.Handling)
	f.Amount("overhead_per_month", &s.OverheadPerMonth)
	f.Number("productive_hours_per_month", &s.ProductiveHoursPerMonth)
	strict.List(f, "equipment", &s.Equipment, machineFields)
	f.Amount("hit_cost", &s.HitCost)
	strict.Object(f, "power", &s.Power, powerFields)
	strict.Object(f, "spares", &s.Spares, sparesFields)
	f.Choice("sheet_share", &s.SheetShare, "alone", "area", "count", "first")
	f.Amount("mixing_saves_at_least", &s.MixingSavesAtLeast)
}

func machineFields(f strict.Fields, m *quote.Machine) {
	f.Text("name", &m.Name)
	f.Amount("cost", &m.Cost)
	f.Amount("salvage", &m.Salvage)
	f.Count("life_months", &m.LifeMonths)
	f.Count("life_hits", &m.LifeHits)
}

func powerFields(f strict.Fields, p *quote.Power) {
	f.Number("watts", &p.Watts)
	f.Number("duty_percent", &p.DutyPercent)
	f.Amount("per_kwh", &p.PerKWh)
}

func sparesFields(f strict.Fields, s *quote.Spares) {
	f.Number("garment_percent", &s.GarmentPercent)
	f.Count("garment_at_least", &s.GarmentAtLeast)
	f.Count("garment_from", &s.GarmentFrom)
	f.Number("transfer_percent", &s.TransferPercent)
	f.Count("transfer_at_least", &s.TransferAtLeast)
	f.Count("transfer_from", &s.TransferFrom)
	f.Number("digit_percent", &s.DigitPercent)
	f.Count("digit_at_least", &s.DigitAtLeast)
}

func pricingFields(f strict.Fields, p *quote.Pricing) {
	f.Choice("basis", &p.Basis, "margin", "markup", "split", "hourly")
	f.Number("percent", &p.Percent)
	strict.List(f, "percents", &p.Percents, percentFields)
	f.Number("blank_percent", &p.BlankPercent)
	f.Amount("per_hour", &p.PerHour)
	f.Amount("step", &p.Step)
	f.Choice("sizes", &p.Sizes, "spread", "upcharge", "table")
	strict.Map(f, "upcharges", &p.Upcharges, strict.Fields.Amount)
	f.Amount("minimum_order", &p.MinimumOrder)
	f.Unless("never_rise", &p.MayRise)
	f.Number("floor_percent", &p.FloorPercent)
	f.Amount("delivery_cost", &p.DeliveryCost)
	f.Amount("delivery_charge", &p.DeliveryCharge)
	f.Number("rush_percent", &p.RushPercent)
	f.Number("discount_percent", &p.DiscountPercent)
	f.Amount("discount", &p.Discount)
	strict.Object(f, "tax", &p.Tax, taxFields)
	strict.Object(f, "card", &p.Card, cardFeeFields)
	f.Number("deposit_percent", &p.DepositPercent)
}

func percentFields(f strict.Fields, p *quote.PercentBreak) {
	f.Needs("from", "percent")
	f.Count("from", &p.From)
	f.Number("percent", &p.Percent)
}

func taxFields(f strict.Fields, t *quote.Tax) {
	f.Number("percent", &t.Percent)
	f.Texts("on", &t.On, "goods", "art", "rush", "extras", "delivery")
	f.Flag("exempt", &t.Exempt)
	strict.ObjectOrNone(f, "clothing", &t.Clothing, clothingFields)
}

func clothingFields(f strict.Fields, c *quote.ClothingRule) {
	f.Needs("rule", "amount")
	f.Choice("rule", &c.Rule, "exempt_below", "tax_excess")
	f.Amount("amount", &c.Amount)
}

func cardFeeFields(f strict.Fields, c *quote.CardFee) {
	f.Number("percent", &c.Percent)
	f.Amount("fixed", &c.Fixed)
	f.Flag("pass_on", &c.PassOn)
	f.Number("cap_percent", &c.CapPercent)
}

func paperFields(f strict.Fields, p *quote.Paper) {
	name := func(p *quote.Party) (*string, bool) {
		return &p.Name, p.Name != "" && *p == quote.Party{Name: p.Name}
	}
	strict.NameOrObject(f, "customer", &p.Customer, name, partyFields)
	strict.NameOrObject(f, "shop", &p.Shop, name, partyFields)
	f.Text("number", &p.Number)
	f.Text("needed_by", &p.NeededBy)
	f.Count("valid_days", &p.ValidDays)
	f.Count("stale_days", &p.StaleDays)
	f.Text("terms", &p.Terms)
	f.Text("notes", &p.Notes)
	f.Flag("demo", &p.Demo)
	strict.List(f, "roster", &p.Roster, wearerFields)
}

func wearerFields(f strict.Fields, w *quote.Wearer) {
	f.Needs("garment", "size")
	f.Text("garment", &w.Garment)
	f.Text("size", &w.Size)
	f.Text("person", &w.Person)
}

func partyFields(f strict.Fields, p *quote.Party) {
	f.Text("name", &p.Name)
	f.Text("contact", &p.Contact)
	f.Text("email", &p.Email)
	f.Text("phone", &p.Phone)
	f.Text("address", &p.Address)
	f.Text("website", &p.Website)
}
