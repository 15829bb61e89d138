// Package catalog holds the shop's records as plain values: suppliers, styles, rate cards, the shop's own rates,
// customers and quotes; and makes a priced job of a draft. Lengths are inches, money and percentages are exact decimals.
//
// Not in this package: SQL and files (catalog/store), any pricing rule (quote), anything of a window.
package catalog

import (
	"pressworth/quote"
	"pressworth/quote/calendar"
	"pressworth/quote/money"
)

// Supplier is whom blanks or transfers are bought from.
type Supplier struct {
	ID           int64
	Key          string // short name used as the job file's id, like northgate
	Name         string
	Freight      money.Amount
	FreeFrom     money.Amount
	SharePercent money.Number
	MinimumOrder money.Amount // least value of an order, 0: none
	TransitDays  int
	CutOff       string // order by this time of day, like 14:00
	Contact      string
	Notes        string
	Calendar     calendar.Settings // when it is closed
}

// Style is a supplier's number for a garment, in some colours and sizes.
type Style struct {
	ID          int64
	SupplierID  int64
	Supplier    string // the supplier's key
	Number      string // the supplier's number, like LS-240
	Name        string
	Mill        string
	Category    string // tee, long sleeve, hoodie, crew, polo, cap, tote, youth tee, ...
	Fabric      string // like 100 % cotton
	Tags        []string
	Weight      money.Number  // grams per square metre; 0: not known
	HeatLimit   string        // as the mill states it, like 320 °F; empty: not known
	Caution     string        // what to mind at the press
	NotClothing bool          // a tote, not a garment in the sense of a tax rule
	Handling    *money.Number // seconds a piece; nil: the shop's
	Usual       bool          // "my usual": comes first everywhere
	Retired     bool
	Colors      []Color
	ColorPlaces []int                  `json:"-"` // where each colour stands in the shop file; empty for a style not read from one
	Sizes       []StyleSize            // prices that hold for every colour
	ByColor     map[string][]StyleSize // prices of colours that have their own
	PricedOn    string                 // 2006-01-02: since when the prices in force hold
	Printable   []Printable            // largest artwork by size, where known
}

// Color is one colour a style comes in.
type Color struct {
	Name    string
	Hex     string   // #rrggbb
	Shade   string   // light, dark, heather, neon
	Sizes   []string // the sizes it comes in; nil: all of the style
	Retired bool
}

// StyleSize is one size with the prices in force, in proper order of sizes.
type StyleSize struct {
	Size string
	Each []quote.Break
}

// StyleRow is one line of the Blanks table or of a search: a style in a colour, or with all its colours.
type StyleRow struct {
	StyleID  int64
	Supplier string // name
	Number   string
	Name     string
	Mill     string
	Category string
	Color    Color // zero where the row stands for all colours
	Colors   int
	Sizes    string // like S–3XL
	From     money.Amount
	PricedOn string
	Usual    bool
}

// RateCard is a rate card of the shop, as the engine knows it, with what the window shows beside it.
type RateCard struct {
	ID        int64
	Card      quote.RateCard // Card.ID is its key
	ValidFrom string         // 2006-01-02
	ValidTo   string         // or empty
	Active    bool
	Confirmed bool // the shop has confirmed the press settings; else they are common practice
	Terms     Terms
}

// Terms are how long a card's supplier takes, and what it costs to have it sooner.
type Terms struct {
	ProductionDays int    `json:"production_days,omitempty"` // business days before it is sent
	Rush           []Rush `json:"rush,omitempty"`
}

// Rush is a faster tier: so many business days for so many percent more.
type Rush struct {
	Days    int          `json:"days"`
	Percent money.Number `json:"percent"`
}

// Printable is the largest artwork a size takes, in inches.
type Printable struct {
	Size   string       `json:"size"`
	Width  money.Number `json:"width"`
	Height money.Number `json:"height"`
}

// Shop is the shop's own rates and rules.
type Shop struct {
	Letterhead quote.Party
	Currency   string
	Rates      quote.Shop
	ArtPerHour money.Amount
	Handling   map[string]money.Number // seconds a piece by category, where they differ from the rates
	Levels     []Level                 // the first is used where nothing is said
	Extras     []Extra
	Presets    []Preset
	Ladder     []int
	ValidDays  int
	Terms      string
	StaleDays  int // price lists older than this are flagged
	Demo       bool
}

// Level is a price level: a set of pricing rules for a kind of customer.
type Level struct {
	Name    string
	Pricing quote.Pricing
}

// Extra is an extra the shop offers.
type Extra struct {
	Key   string
	Extra quote.Extra
	Usual bool // put on every new job
}

// Preset is a placement with its usual size: common practice, editable.
type Preset struct {
	Name     string
	Width    money.Number
	Height   money.Number
	Position string // like "3 in below the collar"
	Side     string // front, back, left sleeve, right sleeve, hood, cap front ...
}

// Book is everything Freeze needs beside the draft: the prices in force on a day.
type Book struct {
	Shop      Shop
	Suppliers []Supplier
	Cards     []RateCard
	Styles    map[int64]Style // at least those the draft names
	Times     *Times          // when goods would be ordered; nil: no day is reckoned
	Lettering Lettering       // how names and numbers are set; without heights: the usual
}

// QuoteRow is one line of the quote book.
type QuoteRow struct {
	ID       int64
	Number   string
	State    string
	Customer string
	Title    string
	Pieces   int
	Total    string // with the currency's places; empty where it could not be priced
	Margin   string // percent, one place
	NeededBy string
	Changed  string // RFC 3339
	NextStep string
	Revision int    // number of the latest, 0: none frozen
	Options  int    // how many are offered, 0: no options
	FollowUp string // 2006-01-02 or empty
	Expires  string // 2006-01-02: last day it may be accepted at these prices, or empty
	Paid     string // with the currency's places; empty: nothing
}
