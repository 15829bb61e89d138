package quote

import "pressworth/quote/money"

// Job is everything one price depends on: the portable form that a revision freezes and `pressworth price` reads.
// Lengths are in Unit, money in Currency, times in the unit their name ends in. Fields that a file may leave out have
// the meaning of the zero value, so booleans that are true by default are named for their opposite.
type Job struct {
	Currency   string // ISO 4217 code, like USD
	Unit       string // "in" or "mm"; empty: in
	Title      string
	Garments   []Garment
	Placements []Placement
	Extras     []Extra
	Suppliers  []Supplier
	RateCards  []RateCard
	Shop       Shop
	Art        Art
	Pricing    Pricing
	Ladder     []int
	Paper      *Paper
	Frozen     []Frozen
}

// Info rides along for documents and is never computed with.
type Info struct {
	Category    string `json:"category,omitempty"`
	Hex         string `json:"hex,omitempty"` // #rrggbb of a garment's colour
	Position    string `json:"position,omitempty"`
	Temperature string `json:"temperature,omitempty"`
	Pressure    string `json:"pressure,omitempty"`
	Peel        string `json:"peel,omitempty"`
	EntryID     string `json:"entry_id,omitempty"`
	PricedOn    string `json:"priced_on,omitempty"` // 2006-01-02
	Artwork     string `json:"artwork,omitempty"`
}

// Paper is what the documents need beside the figures.
type Paper struct {
	Customer  Party  `json:"customer"`
	Shop      Party  `json:"shop"` // letterhead
	Number    string `json:"number,omitempty"`
	NeededBy  string `json:"needed_by,omitempty"` // 2006-01-02
	ValidDays int    `json:"valid_days,omitempty"`
	StaleDays int    `json:"stale_days,omitempty"` // prices older than this are marked on the shop's own papers; 0: none
	Terms     string `json:"terms,omitempty"`
	Notes     string `json:"notes,omitempty"`
	Demo      bool   `json:"demo,omitempty"`

	Roster []Wearer `json:"roster,omitempty"`
}

// Party is a name with an address, for a letterhead or a customer. A file may give just the name as a string.
type Party struct {
	Name    string `json:"name,omitempty"`
	Contact string `json:"contact,omitempty"`
	Email   string `json:"email,omitempty"`
	Phone   string `json:"phone,omitempty"`
	Address string `json:"address,omitempty"` // lines divided by \n
	Website string `json:"website,omitempty"`
}

// Garment is one garment line: a style in a colour, with its size run.
type Garment struct {
	ID           string
	Supplier     string
	Style        string
	Name         string
	Color        string
	Shade        string
	Tags         []string
	FromCustomer bool          // supplied_by "customer"
	Handling     *money.Number // seconds a piece; nil: the shop's
	NotClothing  bool
	Price        *money.Amount // typed price each of its group; nil: none
	Group        string        // named price group; empty: by style and placements
	ValueEach    money.Amount  // declared worth of a customer's garment
	Sizes        []Size
	Info         Info
}

// Size is the quantity of one size, and what the blank costs by pieces bought.
type Size struct {
	Size string
	Qty  int
	Each []Break
}

// Break is a price each (or a rate) from a quantity on.
type Break struct {
	From int
	Each money.Amount // price each; on an area card price per square inch
	Info Info
}

// Placement is one artwork at one place on some garments.
type Placement struct {
	ID        string
	Name      string
	Width     money.Number
	Height    money.Number
	Inks      []string
	InkCount  int
	FullColor bool
	NoTurn    bool
	On        []string     // garment ids; nil: every garment
	Method    string       // rate card id; empty or "auto": the engine chooses
	Stitches  money.Number // thousands
	Variants  []Variant
	Info      Info

	// Names and numbers: a different text on each garment.
	Personal   bool
	Texts      []Text
	CharWidth  money.Number
	ChargeEach money.Amount
	ChargeBy   string // "text" or empty: ChargeEach is for each text; "character": for each of its characters
	Untaxed    bool   // what is charged for them bears no tax
}

// Variant is a placement's artwork at another size for some garment sizes.
type Variant struct {
	Sizes  []string
	Width  money.Number
	Height money.Number
}

// Text is one person's text on one garment.
type Text struct {
	Garment string
	Size    string
	Text    string
	Row     int // line of the paper's roster it belongs to, from 1; 0: not said
}

// Wearer is one line of the roster that a job rides along for its documents: who wears which garment.
type Wearer struct {
	Garment string `json:"garment"`
	Size    string `json:"size"`
	Person  string `json:"person,omitempty"`
}

// Extra is a cost or a charge beside garments and artwork.
type Extra struct {
	ID       string
	Name     string
	PerOrder bool     // per "order"; else per piece
	On       []string // garment ids; nil: every garment
	Cost     money.Amount
	Seconds  money.Number
	Charge   money.Amount
	Taxable  bool
}

// Supplier is where blanks or transfers are bought, with what a delivery costs.
type Supplier struct {
	ID           string
	Name         string
	Freight      money.Amount
	FreeFrom     money.Amount  // value from which delivery is free; 0: never
	SharePercent *money.Number // of the freight this job bears; nil: 100
}

// Kinds of rate card.
const (
	AreaCard  = "area"
	SheetCard = "sheet"
	RollCard  = "roll"
	PieceCard = "piece"
)

// RateCard is a list of what a supplier charges for transfers or decoration.
type RateCard struct {
	ID             string
	Name           string
	Supplier       string
	Kind           string
	FullColor      bool
	MaxInks        int // 0: no limit
	Shades         []string
	NotOn          []string
	Only           []string // ids of the placements that may go on it; empty: all
	Press          *Press   // nil: not pressed in the shop
	SetupPerDesign money.Amount
	SetupPerInk    money.Amount
	MinimumEach    money.Amount
	Minimum        int          // area and piece cards: transfers bought at least
	MaxWidth       money.Number // 0: no limit
	MaxHeight      money.Number
	Rates          []Break      // area
	Sizes          []SheetSize  // sheet
	Width          money.Number // roll
	Edge, Gap      money.Number // roll
	Lengths        []RollLength // roll
	By             string       // piece: inks, stitches, area or character; empty: inks
	Prices         []PieceRow   // piece
	FullColorEach  []Break      // piece, by inks
	Info           Info
}

// Press is the time a card's transfers take at the press: seconds a piece, and minutes once a design.
type Press struct {
	Prep, Place, Dwell, Peel, Second money.Number
	PrepMin                          money.Number
}

// SheetSize is one sheet a transfer printer sells, with prices by ink count and number of sheets.
type SheetSize struct {
	Name          string
	Width, Height money.Number
	Edge, Gap     money.Number
	Minimum       int // sheets, 0: 1
	Prices        []InkRow
}

// InkRow prices a sheet with up to so many inks.
type InkRow struct {
	Inks int
	Each []Break
}

// RollLength is one length of a roll that can be bought.
type RollLength struct {
	Length money.Number
	Each   money.Amount
	Info   Info
}

// PieceRow prices a piece up to a figure: inks, thousand stitches, square inches or characters.
type PieceRow struct {
	Upto money.Number
	Each []Break
}

// Shop is what an hour and a hit cost.
type Shop struct {
	WagePerHour             money.Amount
	BurdenPercent           money.Number
	AllowancePercent        money.Number
	JobSetupMin             money.Number
	DesignSetupMin          money.Number
	ChangeoverMin           money.Number
	Handling                money.Number // seconds a piece
	OverheadPerMonth        money.Amount
	ProductiveHoursPerMonth money.Number
	Equipment               []Machine
	HitCost                 money.Amount
	Power                   Power
	Spares                  Spares
	SheetShare              string // alone, area, count, first; empty: alone
	MixingSavesAtLeast      money.Amount
}

// Machine is worn by months or by hits, not both.
type Machine struct {
	Name       string
	Cost       money.Amount
	Salvage    money.Amount
	LifeMonths int
	LifeHits   int
}

// Power is what the press draws.
type Power struct {
	Watts       money.Number
	DutyPercent money.Number
	PerKWh      money.Amount
}

// Spares are bought against misprints.
type Spares struct {
	GarmentPercent  money.Number
	GarmentAtLeast  int
	GarmentFrom     int
	TransferPercent money.Number
	TransferAtLeast int
	TransferFrom    int

	// Stock numerals, bought digit by digit: how many more of each digit are bought than the roster needs. They change the
	// list of purchases, not what the job costs.
	DigitPercent money.Number
	DigitAtLeast int
}

// Art is the time at the drawing table, and what is charged for it.
type Art struct {
	Minutes money.Number
	PerHour money.Amount
	Charge  money.Amount
}

// Pricing turns cost into price.
type Pricing struct {
	Basis           string // margin, markup, split, hourly
	Percent         money.Number
	Percents        []PercentBreak
	BlankPercent    money.Number
	PerHour         money.Amount
	Step            money.Amount
	Sizes           string // spread, upcharge, table; empty: upcharge
	Upcharges       map[string]money.Amount
	MinimumOrder    money.Amount
	MayRise         bool // never_rise false
	FloorPercent    money.Number
	DeliveryCost    money.Amount
	DeliveryCharge  money.Amount
	RushPercent     money.Number
	DiscountPercent money.Number
	Discount        money.Amount
	Tax             Tax
	Card            CardFee
	DepositPercent  money.Number
}

// PercentBreak is a target percentage from a quantity on.
type PercentBreak struct {
	From    int
	Percent money.Number
}

// Tax is a sales tax and what it falls on: goods, rush, art, delivery, extras.
type Tax struct {
	Percent  money.Number
	On       []string
	Exempt   bool
	Clothing *ClothingRule
}

// ClothingRule exempts clothing below an amount each, or taxes only the excess over it.
type ClothingRule struct {
	Rule   string // exempt_below or tax_excess
	Amount money.Amount
}

// CardFee is what taking a card costs.
type CardFee struct {
	Percent    money.Number
	Fixed      money.Amount
	PassOn     bool
	CapPercent money.Number
}

// Frozen holds what was searched for when a revision was frozen, for one total quantity: nothing is searched where it
// is present, only checked.
type Frozen struct {
	Pieces  int               `json:"pieces"`
	Methods map[string]string `json:"methods"`
	Plans   []Plan            `json:"plans"`
}
