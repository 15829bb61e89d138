package main

import (
	"context"
	"errors"
	"flag"
	"time"

	"pressworth/catalog/store"
	"pressworth/quote"
)

// backup writes a verified copy of a shop file; the window may be open meanwhile.
func backup(s shell) error {
	flags := flag.NewFlagSet("backup", flag.ContinueOnError)
	file := flags.String("shop", "", "")
	folder := flags.String("to", "", "")
	_, err := s.parse(flags)
	if err == nil {
		err = required(flags, "shop", "to")
	}
	if err != nil {
		return err
	}
	return withShop(*file, store.Options{ReadOnly: true}, func(ctx context.Context, shop *store.Store) error {
		b, err := shop.Backup(ctx, *folder)
		if err != nil {
			return err
		}
		said := map[string]string{"backup": b.Path}
		if b.Altered != "" {
			said["altered"] = b.Altered
		}
		return s.print(said)
	})
}

// restore puts a backup in the place of a shop file and says where the file that was there is kept.
func restore(s shell) error {
	flags := flag.NewFlagSet("restore", flag.ContinueOnError)
	file := flags.String("shop", "", "")
	words, err := s.parse(flags, "FILE")
	if err == nil {
		err = required(flags, "shop")
	}
	if err != nil {
		return err
	}
	kept, err := store.Restore(context.Background(), words[0], *file, time.Now())
	if err != nil {
		return asDamage(words[0], err)
	}
	return s.print(map[string]string{"shop": *file, "kept": kept})
}

// check looks through a shop file and prints how many records it holds; damage is bad input.
func check(s shell) error {
	flags := flag.NewFlagSet("check", flag.ContinueOnError)
	file := flags.String("shop", "", "")
	_, err := s.parse(flags)
	if err == nil {
		err = required(flags, "shop")
	}
	if err != nil {
		return err
	}
	found, err := store.Check(context.Background(), *file)
	if err != nil {
		return asDamage(*file, err)
	}
	if problems := append(found.Problems, found.Altered...); problems != nil {
		return damage(*file, problems...)
	}
	return s.print(map[string]any{"ok": true, "schema": found.Schema, "records": found.Counts})
}

// asDamage makes bad input of a file that is damaged, or no shop file at all.
func asDamage(file string, err error) error {
	if errors.Is(err, store.ErrDamaged) || errors.Is(err, store.ErrNotShop) || errors.Is(err, store.ErrNewer) {
		return damage(file, err.Error())
	}
	return err
}

func damage(file string, problems ...string) error {
	var all quote.Problems
	for _, p := range problems {
		all = append(all, quote.Problem{Path: file, Problem: p})
	}
	return all
}
