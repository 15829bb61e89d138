package catalog

// Draft is a job as it stands in the form: raw text, so that a form which cannot be priced yet still saves itself.
// Drafts are values: a change makes a new one, which is what undo keeps. Freeze makes a priced job of one.
type Draft struct {
	ID       int64  // 0: not saved yet
	Number   string // quote number, like 2026-0147; given when first saved
	State    string // draft, sent, accepted, declined, finished
	Title    string
	Customer DraftCustomer
	QuotedOn string // 2006-01-02: prices valid on this day are used
	NeededBy string // 2006-01-02 or empty
	Level    string // price level's name; empty: the shop's first

	Garments   []DraftGarment
	Placements []DraftPlacement
	Extras     []DraftExtra
	Roster     []DraftPerson // names and numbers, in the order of the list

	ArtMinutes      string
	ArtCharge       string
	RushPercent     string
	DiscountPercent string
	Discount        string
	DeliveryCost    string
	DeliveryCharge  string
	TaxExempt       bool
	Ladder          string // quantities divided by spaces or commas; empty: the shop's
	Notes           string // printed on the quote
	Option          int    // position among the quote's options, 0: it has none
}

// DraftCustomer is whom the quote is for; ID 0 is somebody not (yet) kept.
type DraftCustomer struct {
	ID                                   int64
	Name, Contact, Email, Phone, Address string
}

// DraftGarment is one garment line of the form: a style of the catalog in one colour, or a customer's own garment.
type DraftGarment struct {
	Key          string // stable within the draft, the job's garment id
	StyleID      int64  // 0: a customer's own garment
	Color        string
	FromCustomer bool
	Name         string // a customer's own garment: what it is
	Shade        string // a customer's own garment
	Tags         string // a customer's own garment: words divided by commas
	ValueEach    string // a customer's own garment: declared worth
	Price        string // typed price each; empty: computed
	Sizes        []DraftSize
}

// DraftSize is the quantity typed for one size.
type DraftSize struct{ Size, Qty string }

// DraftPlacement is one row of artwork.
type DraftPlacement struct {
	Key       string
	Name      string
	Width     string // inches
	Height    string
	Inks      string // names divided by commas, or a count like 2
	FullColor bool
	Stitches  string   // thousands
	On        []string // garment keys; nil: every garment
	Method    string   // rate card key; empty: auto
	NoTurn    bool
	Variants  []DraftVariant
	Position  string // where it sits, like "3 in below the collar"
	Artwork   string // path of a picture, or empty
	DesignID  int64  // the design on file that it repeats, 0: new artwork
	OnFile    bool   // its set-up and art are paid: they cost and charge nothing this time
	FileCard  string // key of the rate card whose set-up is paid

	// Names and numbers: a different text on each garment.
	Personal   bool
	Letters    string // which column of the roster it prints: name or number
	Ages       string // youth or adult: on the sizes of these only; empty: on all
	Texts      []DraftText
	CharWidth  string
	ChargeEach string
	ChargeBy   string // character: ChargeEach is for each character; empty: for each text
	Untaxed    bool   // what is charged for them bears no tax
}

// DraftPerson is one line of a roster: who wears what, with which name and number.
type DraftPerson struct {
	Garment string // garment key; empty: not said
	Size    string
	Person  string
	Name    string // as it is printed
	Number  string
}

// DraftText is one person's text on one garment.
type DraftText struct {
	Garment string // garment key
	Size    string
	Text    string
	Row     int // line of the roster, from 1; 0: not from the roster
}

// DraftVariant is another size of the artwork for some garment sizes.
type DraftVariant struct {
	Sizes  string // divided by spaces or commas
	Width  string
	Height string
}

// DraftExtra is an extra taken on the job, its amounts editable.
type DraftExtra struct {
	Key      string
	Name     string
	PerOrder bool
	Cost     string
	Seconds  string
	Charge   string
	Taxable  bool
	On       []string // garment keys; nil: every garment
}
