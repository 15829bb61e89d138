package main

import (
	"context"
	"errors"
	"flag"
	"fmt"

	"pressworth/catalog"
	"pressworth/catalog/store"
)

// blanks is two commands: import and find.
func blankCommands(s shell) error {
	if len(s.args) > 0 {
		verb := s.args[0]
		s.args = s.args[1:]
		switch verb {
		case "find":
			return findBlanks(s)
		case "import":
			return importBlanks(s)
		}
	}
	return errors.New("blanks: say `blanks import` or `blanks find`; `pressworth help` shows how they are called")
}

// mostFound is how many blanks a search lists at most.
const mostFound = 1000

// foundBlank is one line of a search's result.
type foundBlank struct {
	Supplier string `json:"supplier"`
	Style    string `json:"style"`
	Name     string `json:"name"`
	Mill     string `json:"mill,omitempty"`
	Category string `json:"category,omitempty"`
	Color    string `json:"color"`
	Sizes    string `json:"sizes"`
	From     string `json:"price_from"`
	PricedOn string `json:"priced_on,omitempty"`
}

// findBlanks prints what the window's search finds.
func findBlanks(s shell) error {
	flags := flag.NewFlagSet("blanks find", flag.ContinueOnError)
	file := flags.String("shop", "", "")
	limit := flags.Int("limit", 50, "")
	words, err := s.parse(flags, "WORDS")
	if err == nil {
		err = required(flags, "shop")
	}
	if err != nil {
		return err
	}
	if *limit < 1 || *limit > mostFound {
		return fmt.Errorf("blanks find: --limit %d: enter 1 to %d", *limit, mostFound)
	}
	return withShop(*file, store.Options{ReadOnly: true}, func(ctx context.Context, shop *store.Store) error {
		rows, err := shop.FindBlanks(ctx, words[0], *limit)
		if err != nil {
			return err
		}
		return s.print(map[string]any{"blanks": found(rows)})
	})
}

func found(rows []catalog.StyleRow) []foundBlank {
	list := make([]foundBlank, 0, len(rows))
	for _, r := range rows {
		list = append(list, foundBlank{r.Supplier, r.Number, r.Name, r.Mill, r.Category, r.Color.Name, r.Sizes, r.From.String(), r.PricedOn})
	}
	return list
}
