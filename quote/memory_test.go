package quote_test

import (
	"errors"
	"reflect"
	"testing"

	"pressworth/quote"
)

func TestMemory_stopEndsTheWorkAndLeavesWhatIsRememberedTrue(t *testing.T) {
	job := demoJob(t)
	k := quote.NewMemory()
	began, ended := make(chan struct{}), make(chan error)
	go func() {
		close(began)
		_, err := k.Cheapest(job, job.Placements[0].ID, quote.MostCheapest)
		ended <- err
	}()
	<-began
	var err error
	for stopping := true; stopping; {
		select {
		case err = <-ended:
			stopping = false
		default:
			k.Stop()
		}
	}
	if !errors.Is(err, quote.ErrStopped) {
		t.Errorf("got %v, want the work stopped", err)
	}
	got, err := k.Price(job)
	if err != nil {
		t.Fatal(err)
	}
	if want, _ := quote.Price(job); !reflect.DeepEqual(got, want) {
		t.Error("after a stop the memory gives another result than a new one")
	}
}
