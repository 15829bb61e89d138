package assets

import _ "embed"

// Icon is the program's icon, a PNG of 512 × 512 drawn from icon.svg: a platen over a price tag.
//
//go:embed icon.png
var Icon []byte
