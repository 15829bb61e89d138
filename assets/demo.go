package assets

import _ "embed"

// The demo shop, everything in it invented: DemoJob has its rates, suppliers and rate cards in the form of a job file,
// DemoCatalog its styles, presets and ready quotes, DemoBook what its quote book tells of the last weeks.
var (
	//go:embed demo/job.json
	DemoJob []byte
	//go:embed demo/catalog.json
	DemoCatalog []byte
	//go:embed demo/book.json
	DemoBook []byte
)
