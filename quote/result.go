package quote

import "pressworth/quote/money"

// Result is everything the engine has to say about a job. Amounts have the currency's places. Window and paper show
// what stands here and compute no money of their own.
type Result struct {
	Format        string        `json:"format"`
	Currency      string        `json:"currency"`
	Title         string        `json:"title,omitempty"`
	Pieces        int           `json:"pieces"`
	Cost          Cost          `json:"cost"`
	Garments      []GarmentLine `json:"garments"`
	Groups        []Group       `json:"groups"`
	Methods       []Method      `json:"methods"`
	Plans         []Plan        `json:"plans"`
	Price         Totals        `json:"price"`
	Hours         string        `json:"hours"`          // two places
	MarginPercent *string       `json:"margin_percent"` // one place; nil when the subtotal is 0
	LeftPerHour   *money.Amount `json:"left_per_hour"`  // nil under a quarter of an hour
	Ladder        []Step        `json:"ladder"`
	Cliffs        []Cliff       `json:"cliffs"`
	Purchases     Purchases     `json:"purchases"`
	Leftovers     []Leftover    `json:"leftovers"`
	Heuristic     bool          `json:"heuristic,omitempty"` // methods were not searched exhaustively
	Warnings      []Warning     `json:"warnings"`
}

// Cost is what the job costs, line by line.
type Cost struct {
	Total money.Amount `json:"total"`
	Lines []CostLine   `json:"lines"`
}

// Kinds of cost line, in the order they are listed.
const (
	KindBlanks    = "blanks"
	KindSpoilage  = "spoilage"
	KindTransfers = "transfers"
	KindExtra     = "extra"
	KindFreight   = "freight"
	KindLabour    = "labour"
	KindOverhead  = "overhead"
	KindPressWear = "press_wear"
	KindArt       = "art"
	KindDelivery  = "delivery"
)

// CostLine is one cost with the formula behind it.
type CostLine struct {
	Kind    string       `json:"kind"`
	Ref     string       `json:"ref"` // garment line, supplier, extra or placement; empty: the whole job
	Amount  money.Amount `json:"amount"`
	Basis   string       `json:"basis"`
	Entries []string     `json:"entries,omitempty"` // ids of the price entries it came from
}

// GarmentLine is one garment line with its share of the cost and its prices.
type GarmentLine struct {
	ID        string       `json:"id"`
	Group     string       `json:"group"`
	Pieces    int          `json:"pieces"`
	Cost      money.Amount `json:"cost"`
	CostEach  money.Amount `json:"cost_each"`
	UnitPrice money.Amount `json:"unit_price"` // u, without size additions
	Goods     money.Amount `json:"goods"`
	Sizes     []SizePrice  `json:"sizes"`
	Split     []CostLine   `json:"split"` // its share of each cost line
}

// SizePrice is one size of a garment line.
type SizePrice struct {
	Size      string       `json:"size"`
	Qty       int          `json:"qty"`
	Spares    int          `json:"spares"`
	UnitPrice money.Amount `json:"unit_price"`
	BlankEach money.Amount `json:"blank_each"` // at the break in force
}

// Group is a price group: garment lines that share spares and one price.
type Group struct {
	ID        string       `json:"id"`
	Lines     []string     `json:"lines"`
	Pieces    int          `json:"pieces"`
	Spares    int          `json:"spares"`
	Cost      money.Amount `json:"cost"`
	CostEach  money.Amount `json:"cost_each"`
	ToRecover money.Amount `json:"to_recover"` // cost less what is charged for separately
	Computed  money.Amount `json:"computed"`   // the price each by the rules, before a typed price
	UnitPrice money.Amount `json:"unit_price"`
	Typed     bool         `json:"typed"`
	Basis     string       `json:"basis"`
}

// Method is the card chosen for a placement.
type Method struct {
	Placement    string        `json:"placement"`
	Card         string        `json:"card"`
	Transfers    money.Amount  `json:"transfers"` // its transfers cost line
	Needed       int           `json:"needed"`    // transfers needed, spares included
	RunnerUp     string        `json:"runner_up,omitempty"`
	RunnerUpCost *money.Amount `json:"runner_up_cost,omitempty"` // the whole job's cost with it
	Difference   *money.Amount `json:"difference,omitempty"`     // runner-up's job cost less this one's
}

// Plan is what is printed on one sheet or roll card.
type Plan struct {
	Card        string       `json:"card"`
	Cost        money.Amount `json:"cost"`  // setups included
	Bound       money.Amount `json:"bound"` // no plan costs less
	Setup       money.Amount `json:"setup"`
	Heuristic   bool         `json:"heuristic,omitempty"`
	UsedPercent string       `json:"used_percent"` // one place
	Runs        []Run        `json:"runs"`
}

// Run is one layout printed a number of times: on sheets of a size, or on lengths of a roll.
type Run struct {
	Size        string          `json:"size,omitempty"`
	Length      string          `json:"length,omitempty"`
	Inks        int             `json:"inks"`
	Sheets      int             `json:"sheets"`
	Each        money.Amount    `json:"each"`
	Setup       money.Amount    `json:"setup"`
	Width       string          `json:"width"`
	Height      string          `json:"height"`
	UsedPercent string          `json:"used_percent"`
	Pieces      []PlacedPiece   `json:"pieces"`
	Weights     []SharingWeight `json:"weights"` // how the run's cost is split
	Entry       string          `json:"entry,omitempty"`
	Room        *Room           `json:"room,omitempty"` // what every sheet has room for beside; nil: nothing
}

// Room is what the sheets of a run have room left for, for the shop to offer: further copies of the design that fills
// most of it, and the largest free rectangle, in the job's unit. Both are found by looking, not proven largest.
type Room struct {
	Placement string `json:"placement,omitempty"`
	Variant   int    `json:"variant,omitempty"`
	More      int    `json:"more,omitempty"` // copies a sheet
	W         string `json:"w,omitempty"`
	H         string `json:"h,omitempty"`
}

// PlacedPiece is one transfer on a sheet; lengths in the job's unit, from the sheet's corner.
type PlacedPiece struct {
	Placement string `json:"placement"`
	Variant   int    `json:"variant"` // 0: the placement's own size, k: its k-th variant
	Text      string `json:"text,omitempty"`
	X         string `json:"x"`
	Y         string `json:"y"`
	W         string `json:"w"`
	H         string `json:"h"`
	Turned    bool   `json:"turned"`
}

// SharingWeight is an item's weight in its run's cost.
type SharingWeight struct {
	Placement string       `json:"placement"`
	Variant   int          `json:"variant"`
	Text      string       `json:"text,omitempty"`
	Weight    string       `json:"weight"`
	Cost      money.Amount `json:"cost"`
}

// Totals are what the customer pays.
type Totals struct {
	Goods        money.Amount      `json:"goods"`
	MinimumOrder money.Amount      `json:"minimum_order"`
	Rush         money.Amount      `json:"rush"`
	Discount     money.Amount      `json:"discount"`
	Extras       money.Amount      `json:"extras"`
	Art          money.Amount      `json:"art"`
	Delivery     money.Amount      `json:"delivery"`
	Subtotal     money.Amount      `json:"subtotal"`
	Taxable      money.Amount      `json:"taxable"`
	Tax          money.Amount      `json:"tax"`
	CardFee      money.Amount      `json:"card_fee"`
	AbsorbedFee  money.Amount      `json:"absorbed_fee"`
	Total        money.Amount      `json:"total"`
	Deposit      money.Amount      `json:"deposit"`
	Balance      money.Amount      `json:"balance"`
	ExtraLines   []ExtraLine       `json:"extra_lines"`
	Basis        map[string]string `json:"basis"` // by the amount's JSON name
}

// ExtraLine is the revenue of one extra, or of one placement's names and numbers (kind "personal").
type ExtraLine struct {
	Kind   string       `json:"kind"` // extra or personal
	Ref    string       `json:"ref"`
	Name   string       `json:"name"`
	Amount money.Amount `json:"amount"`
	Basis  string       `json:"basis"`
}

// Step is one quantity of the ladder.
type Step struct {
	Pieces   int                     `json:"pieces"`
	Unserved bool                    `json:"unserved,omitempty"` // no card serves a placement at this quantity
	Each     money.Amount            `json:"each"`
	Units    map[string]money.Amount `json:"units"` // u by garment line
	Goods    money.Amount            `json:"goods"`
	Total    money.Amount            `json:"total"`
	Cost     money.Amount            `json:"cost"`
	Methods  map[string]string       `json:"methods"`
}

// Cliff says that the larger quantity has the lower total.
type Cliff struct {
	From  int          `json:"from"`
	To    int          `json:"to"`
	Saves money.Amount `json:"saves"`
}

// Purchases are what the job needs bought.
type Purchases struct {
	Blanks    []BlankPurchase    `json:"blanks"`
	Transfers []TransferPurchase `json:"transfers"`
}

// BlankPurchase is one style in one colour from one supplier.
type BlankPurchase struct {
	Supplier string       `json:"supplier"`
	Style    string       `json:"style"`
	Name     string       `json:"name,omitempty"`
	Color    string       `json:"color"`
	Sizes    []SizeCount  `json:"sizes"`
	Value    money.Amount `json:"value"`
}

// SizeCount is a number of blanks of one size, spares included.
type SizeCount struct {
	Size string `json:"size"`
	Qty  int    `json:"qty"`
}

// TransferPurchase is what is bought on one card.
type TransferPurchase struct {
	Supplier string       `json:"supplier"`
	Card     string       `json:"card"`
	Value    money.Amount `json:"value"`
	Items    []BoughtItem `json:"items"`

	Characters []CharacterCount `json:"characters,omitempty"` // bought one by one, in their order
}

// CharacterCount is how many of a character a roster needs, and how many are bought with a few spare.
type CharacterCount struct {
	Placement string `json:"placement"`
	Character string `json:"character"`
	Needed    int    `json:"needed"`
	Qty       int    `json:"qty"`
}

// BoughtItem is a count of transfers of a placement, of sheets of a size, or of lengths of a roll.
type BoughtItem struct {
	What string `json:"what"`
	Qty  int    `json:"qty"`
}

// Leftover is a number of copies bought beyond what was needed.
type Leftover struct {
	Placement string `json:"placement"`
	Variant   int    `json:"variant"`
	Copies    int    `json:"copies"`
}

// Warning is something the shop should know about the job; codes are stable, texts are for people.
type Warning struct {
	Code string `json:"code"`
	Path string `json:"path"`
	Text string `json:"text"`
}

// Problem is one thing wrong with a job, by the path of its field.
type Problem struct {
	Path    string `json:"path"`
	Problem string `json:"problem"`
}

// Span is a run of quantities over which one card is the choice; an empty card means that none serves.
type Span struct {
	From int    `json:"from"`
	To   int    `json:"to"`
	Card string `json:"card"`
}

// InkSpans are the spans for one ink count: "1" to "6", or "full".
type InkSpans struct {
	Inks  string `json:"inks"`
	Spans []Span `json:"spans"`
}

// CheapestFromTo is which card is cheapest for a placement at which quantities, for its own inks and for each count.
type CheapestFromTo struct {
	Placement string     `json:"placement"`
	Spans     []Span     `json:"spans"`
	ByInks    []InkSpans `json:"by_inks"`
}
