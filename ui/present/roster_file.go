package present

import (
	"io"

	"pressworth/catalog/pricefile"
)

// mostPeople is the longest list that is read.
const mostPeople = 5000

// ReadRoster reads the rows of a list of people from a CSV or XLSX file, in whatever encoding it is.
func ReadRoster(r io.Reader) ([][]string, error) {
	f, err := pricefile.Open(r)
	if err != nil {
		return nil, err
	}
	return f.Table(mostPeople + 1)
}
