package cards

import (
	"errors"
	"fmt"
	"slices"

	"pressworth/quote"
	"pressworth/quote/money"
)

// question is what a card is asked on the spot: one artwork on so many pieces.
type question struct {
	width, height money.Number
	inks          int // 0: full colour
	stitches      money.Number
	pieces        int
}

// ask has the engine price the artwork on plain garments with nothing but this card, and gives the transfers' cost.
func ask(card quote.RateCard, q question) (cost money.Amount, basis string, err error) {
	card.ID, card.Supplier, card.NotOn, card.Shades = "card", "", nil, nil
	job := quote.Job{
		Currency: "USD", RateCards: []quote.RateCard{card},
		Garments: []quote.Garment{{
			ID: "g", Name: "garment", Color: "any", Shade: "light", FromCustomer: true,
			Sizes: []quote.Size{{Size: "M", Qty: q.pieces}},
		}},
		Placements: []quote.Placement{{
			ID: "p", Name: "artwork", Width: q.width, Height: q.height, InkCount: q.inks,
			FullColor: q.inks == 0, Stitches: q.stitches, Method: "card",
		}},
		Pricing: quote.Pricing{Basis: "markup"},
	}
	result, err := quote.Price(job)
	if err != nil {
		return cost, "", err
	}
	for _, line := range result.Cost.Lines {
		if line.Kind == quote.KindTransfers {
			return line.Amount, line.Basis, nil
		}
	}
	return cost, "", errors.New("the card charges nothing for this")
}

// checked is what the engine finds wrong with the card itself.
func checked(card quote.RateCard) []quote.Problem {
	_, _, err := ask(card, question{width: money.Int(1), height: money.Int(1), inks: 1, stitches: money.Int(1), pieces: 1})
	var problems quote.Problems
	if !errors.As(err, &problems) {
		return nil
	}
	return slices.DeleteFunc([]quote.Problem(problems), func(p quote.Problem) bool {
		return len(p.Path) < len("rate_cards") || p.Path[:len("rate_cards")] != "rate_cards"
	})
}

// steps are the quantities the chart is drawn for.
var steps = []int{6, 12, 24, 48, 72, 144, 288}

// sentence is an answer in words.
func sentence(q question, cost money.Amount, basis string, err error) string {
	switch {
	case err != nil:
		return "It would not be made with this card: " + firstProblem(err)
	case basis == "":
		return fmt.Sprintf("%d pieces cost %s.", q.pieces, cost)
	}
	return fmt.Sprintf("%d pieces cost %s: %s.", q.pieces, cost, basis)
}

func firstProblem(err error) string {
	var problems quote.Problems
	if errors.As(err, &problems) && len(problems) > 0 {
		return problems[0].Problem
	}
	return err.Error()
}
