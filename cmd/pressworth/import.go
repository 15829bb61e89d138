package main

import (
	"bytes"
	"context"
	"encoding/json"
	"errors"
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"time"

	"pressworth/catalog"
	"pressworth/catalog/pricefile"
	"pressworth/catalog/store"
	"pressworth/quote"
	"pressworth/quote/money"
)

// importing is one call of `blanks import`.
type importing struct {
	file, supplier, shop, columns string
	dry                           bool
}

// imported is what it prints: counts are of sizes in colours, except those of styles and of rows.
type imported struct {
	Rows      int            `json:"rows"`
	Counts    map[string]int `json:"counts"`
	NewStyles int            `json:"new_styles"`
	Gone      int            `json:"gone_styles"`
	Refused   int            `json:"refused"`
	Refusals  []refusal      `json:"refusals"` // the first thousand
	Applied   bool           `json:"applied"`
}

type refusal struct {
	Line    int    `json:"line"`
	Field   string `json:"field"`
	Problem string `json:"problem"`
}

// importBlanks takes a supplier's price file into a shop file: all of it or nothing. A shop file or a supplier that is
// not there yet is made; with --dry-run nothing is.
func importBlanks(s shell) error {
	var i importing
	flags := flag.NewFlagSet("blanks import", flag.ContinueOnError)
	flags.StringVar(&i.supplier, "supplier", "", "")
	flags.StringVar(&i.shop, "shop", "", "")
	flags.StringVar(&i.columns, "columns", "", "")
	flags.BoolVar(&i.dry, "dry-run", false, "")
	words, err := s.parse(flags, "FILE")
	if err == nil {
		err = required(flags, "supplier", "shop")
	}
	if err != nil {
		return err
	}
	i.file = words[0]
	result, err := i.run(context.Background(), s)
	if err != nil {
		return asProblem(err)
	}
	return s.print(result)
}

// asProblem tells a file that is no price list from other trouble.
func asProblem(err error) error {
	var bad *pricefile.Error
	if !errors.As(err, &bad) {
		return err
	}
	path := ""
	if bad.Line > 0 {
		path = fmt.Sprintf("line %d", bad.Line)
	}
	problem := bad.Problem
	if bad.Err != nil {
		problem += ": " + bad.Err.Error()
	}
	return quote.Problems{{Path: path, Problem: problem}}
}

func (i importing) run(ctx context.Context, s shell) (result imported, err error) {
	if _, err := os.Stat(i.file); err != nil { // before a shop file is made for it
		return result, err
	}
	path, forget, err := i.shopPath()
	if err != nil {
		return result, err
	}
	defer forget()
	shop, err := openShop(ctx, path, false)
	if err != nil {
		return result, err
	}
	defer func() { err = errors.Join(err, shop.Close()) }()
	supplier, err := i.findSupplier(ctx, shop)
	if err != nil {
		return result, err
	}
	plan, err := i.plan(ctx, s, shop, supplier.ID)
	if err != nil || i.dry {
		return summary(plan), err
	}
	if _, err = shop.Apply(ctx, plan, nil); err == nil {
		result = summary(plan)
		result.Applied = true
	}
	return result, err
}

// shopPath is the shop file, or for a dry run without one an empty one in a folder that is forgotten afterwards.
func (i importing) shopPath() (path string, forget func(), err error) {
	if _, err := os.Stat(i.shop); !i.dry || err == nil {
		return i.shop, func() {}, nil
	}
	folder, err := os.MkdirTemp("", "pressworth-")
	return filepath.Join(folder, "shop.db"), func() { _ = os.RemoveAll(folder) }, err
}

// findSupplier finds a supplier by name or key, and makes one that is not there.
func (i importing) findSupplier(ctx context.Context, shop *store.Store) (catalog.Supplier, error) {
	all, err := shop.Suppliers(ctx)
	if err != nil {
		return catalog.Supplier{}, err
	}
	for _, x := range all {
		if strings.EqualFold(x.Name, i.supplier) || x.Key == i.supplier {
			return x, nil
		}
	}
	fresh := catalog.Supplier{Key: keyOf(i.supplier), Name: i.supplier, SharePercent: money.Int(100)}
	if i.dry {
		return fresh, nil
	}
	return shop.SaveSupplier(ctx, fresh)
}

// keyOf makes a short name of letters, digits and hyphens.
func keyOf(name string) string {
	key := strings.FieldsFunc(strings.ToLower(name), func(r rune) bool { return (r < 'a' || r > 'z') && (r < '0' || r > '9') })
	if len(key) == 0 {
		return "supplier"
	}
	return strings.Join(key, "-")
}

func (i importing) plan(ctx context.Context, s shell, shop *store.Store, supplier int64) (plan *store.ImportPlan, err error) {
	o := catalog.ImportOptions{SupplierID: supplier, FileName: filepath.Base(i.file), ValidFrom: time.Now().Format(time.DateOnly)}
	err = withPriceFile(i.file, func(f *pricefile.File) error {
		columns := f.Guess()
		if i.columns != "" {
			if columns, err = readColumns(s, i.columns); err != nil {
				return err
			}
		}
		if err := columns.Check(); err != nil {
			return err
		}
		plan, err = shop.PlanImport(ctx, func(take func(catalog.PriceRow) error, refuse func(catalog.Refused)) error {
			return f.Rows(columns, take, refuse)
		}, o)
		return err
	})
	return plan, err
}

// readColumns reads which column holds what; a key it does not know is an error.
func readColumns(s shell, file string) (c pricefile.Columns, err error) {
	data, err := s.read(file)
	if err != nil {
		return c, err
	}
	in := json.NewDecoder(bytes.NewReader(data))
	in.DisallowUnknownFields()
	if err := in.Decode(&c); err != nil {
		return c, quote.Problems{{Path: "--columns", Problem: err.Error()}}
	}
	return c, nil
}

func summary(plan *store.ImportPlan) imported {
	if plan == nil {
		return imported{}
	}
	r := plan.Report
	out := imported{Rows: r.Rows, Counts: r.Counts, NewStyles: r.NewStyles, Gone: r.Gone, Refused: r.Refused, Refusals: []refusal{}}
	for _, x := range r.Refusals {
		out.Refusals = append(out.Refusals, refusal{x.Line, x.Field, x.Reason})
	}
	return out
}
