package catalog

import (
	"fmt"
	"strings"

	"pressworth/quote/measure"
	"pressworth/quote/money"
)

type demoStyle struct {
	Supplier    string        `json:"supplier"`
	Number      string        `json:"number"`
	Name        string        `json:"name"`
	Mill        string        `json:"mill"`
	Category    string        `json:"category"`
	Fabric      string        `json:"fabric"`
	Ounces      money.Number  `json:"oz"` // a square yard
	Tags        []string      `json:"tags"`
	Handling    *money.Number `json:"handling"`
	Caution     string        `json:"caution"`
	HeatLimit   string        `json:"heat_limit"`
	Usual       bool          `json:"usual"`
	NotClothing bool          `json:"not_clothing"`
	Colors      []string      `json:"colors"`
	Sizes       []struct {
		Sizes string `json:"sizes"`
		Price string `json:"price"`
	} `json:"sizes"`
}

func (r demoReader) styles() ([]Style, error) {
	ids := make(map[string]int64)
	for _, s := range r.suppliers() {
		ids[s.Key] = s.ID
	}
	var out []Style
	for i, d := range r.file.Styles {
		s := Style{
			ID: int64(i + 1), SupplierID: ids[d.Supplier], Supplier: d.Supplier, Number: d.Number, Name: d.Name, Mill: d.Mill,
			Category: d.Category, Fabric: d.Fabric, Tags: d.Tags, Weight: measure.GramsPerSquareMetre(d.Ounces, 1), HeatLimit: d.HeatLimit,
			Caution: d.Caution, NotClothing: d.NotClothing, Handling: d.Handling, Usual: d.Usual, PricedOn: r.pricedOn(d.Supplier),
		}
		for _, name := range d.Colors {
			tint, ok := r.file.Palette[name]
			if !ok {
				return nil, fmt.Errorf("style %s: colour %q is not in the palette", d.Number, name)
			}
			s.Colors = append(s.Colors, Color{Name: name, Hex: tint.Hex, Shade: tint.Shade})
		}
		for _, z := range d.Sizes {
			each, err := ReadBreaks(z.Price)
			if err != nil {
				return nil, fmt.Errorf("style %s: %w", d.Number, err)
			}
			for _, size := range strings.Fields(z.Sizes) {
				s.Sizes = append(s.Sizes, StyleSize{Size: size, Each: each})
			}
		}
		out = append(out, s)
	}
	return out, nil
}

type demoDraft struct {
	Number     int             `json:"number"`
	Title      string          `json:"title"`
	NeededIn   int             `json:"needed_in"`
	Level      string          `json:"level"`
	Customer   demoCustomer    `json:"customer"`
	Garments   []demoGarment   `json:"garments"`
	Placements []demoPlacement `json:"placements"`
	ArtMinutes string          `json:"art_minutes"`
	ArtCharge  string          `json:"art_charge"`
}

type demoCustomer struct {
	Name    string `json:"name"`
	Contact string `json:"contact"`
	Email   string `json:"email"`
	Phone   string `json:"phone"`
	Address string `json:"address"`
}

type demoGarment struct {
	Key      string      `json:"key"`
	Supplier string      `json:"supplier"`
	Style    string      `json:"style"`
	Color    string      `json:"color"`
	Sizes    []DraftSize `json:"sizes"`
}

type demoPlacement struct {
	Key       string   `json:"key"`
	Name      string   `json:"name"`
	Width     string   `json:"width"`
	Height    string   `json:"height"`
	Inks      string   `json:"inks"`
	FullColor bool     `json:"full_color"`
	Stitches  string   `json:"stitches"`
	On        []string `json:"on"`
	Position  string   `json:"position"`
}

func (r demoReader) drafts(demo Demo) []Draft {
	var out []Draft
	for _, x := range r.file.Drafts {
		d := x.draft(demo)
		d.Number = QuoteNumber(r.today.Year(), x.Number) // in the year of the day
		d.QuotedOn, d.NeededBy = r.ago(0), r.ago(-x.NeededIn)
		out = append(out, d)
	}
	return out
}

// draft is what a demo quote asks for, without its number and days.
func (x demoDraft) draft(demo Demo) Draft {
	d := NewDraft(demo.Shop)
	d.Title, d.Level, d.ArtMinutes, d.ArtCharge = x.Title, x.Level, x.ArtMinutes, x.ArtCharge
	c := x.Customer
	d.Customer = DraftCustomer{Name: c.Name, Contact: c.Contact, Email: c.Email, Phone: c.Phone, Address: c.Address}
	for _, g := range x.Garments {
		d.Garments = append(d.Garments, DraftGarment{Key: g.Key, StyleID: demo.style(g.Supplier, g.Style), Color: g.Color, Sizes: g.Sizes})
	}
	for _, p := range x.Placements {
		d.Placements = append(d.Placements, DraftPlacement{
			Key: p.Key, Name: p.Name, Width: p.Width, Height: p.Height, Inks: p.Inks, FullColor: p.FullColor,
			Stitches: p.Stitches, On: p.On, Position: p.Position,
		})
	}
	return d
}

func (d Demo) style(supplier, number string) int64 {
	for _, s := range d.Styles {
		if s.Supplier == supplier && s.Number == number {
			return s.ID
		}
	}
	return 0
}

// QuoteNumber is how quotes are numbered: by year, like 2026-0147.
func QuoteNumber(year, n int) string { return fmt.Sprintf("%d-%04d", year, n) }
