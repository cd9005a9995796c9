// Pages that show the notebook follow it: what carries data-live is fetched again when the server says that something was kept.
