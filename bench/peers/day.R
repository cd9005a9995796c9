# The day model in Stan. day.R compile FOLDER | points DATA POSITIONS OUT FOLDER | sample DATA METRIC SEED WARMUP DRAWS ADAPT_DELTA FOLDER
suppressPackageStartupMessages(suppressWarnings(library(rstan)))
arguments <- commandArgs(trailingOnly = TRUE)
here <- dirname(normalizePath(sub("^--file=", "", grep("^--file=", commandArgs(), value = TRUE))))

# Scalars stay scalars, lists become arrays also where they have one element.
read_data <- function(path) {
  text <- jsonlite::fromJSON(path)
  c(text$numbers, lapply(text$lists, as.array))
}

read_numbers <- function(path) {
  file <- file(path, "rb")
  on.exit(close(file))
  size <- readBin(file, "integer", 2)
  matrix(readBin(file, "double", prod(size)), size[1], size[2], byrow = TRUE)
}

write_numbers <- function(path, rows) {
  file <- file(path, "wb")
  on.exit(close(file))
  writeBin(dim(rows), file)
  writeBin(as.double(t(rows)), file)
}

compiled <- function(folder) readRDS(file.path(folder, "day.rds"))

compile <- function(folder) {
  Sys.setenv(R_MAKEVARS_USER = file.path(here, "Makevars"))
  seconds <- system.time(model <- stan_model(file.path(here, "day.stan"), model_name = "day", boost_lib = "/usr/include"))[["elapsed"]]
  saveRDS(model, file.path(folder, "day.rds"))
  cat(sprintf("compiled\t%.1f\n", seconds))
}

points <- function(data, positions, out, folder) {
  fit <- sampling(compiled(folder), data = read_data(data), chains = 0)
  u <- read_numbers(positions)
  rows <- t(apply(u, 1, function(x) {
    gradient <- grad_log_prob(fit, x)
    c(attr(gradient, "log_prob"), gradient)
  }))
  write_numbers(out, rows)
}

# Greedy on two cores in the order of the chains, by Stan's own clock of each: R's start and housekeeping don't count. That clock is of core time (C's clock()), so other
# work on the machine doesn't lengthen it.
on_two_cores <- function(seconds) {
  free <- c(0, 0)
  for (s in seconds) free[which.min(free)] <- min(free) + s
  max(free)
}

sample_seed <- function(data, metric, seed, warmup, draws, delta, folder) {
  model <- compiled(folder)
  data <- read_data(data)
  one <- function(chain) suppressWarnings(sampling(model, data = data, chains = 1, chain_id = chain, cores = 1, seed = seed, iter = warmup + draws,
    warmup = warmup, save_warmup = TRUE, refresh = -1, show_messages = FALSE, control = list(adapt_delta = delta, metric = metric)))
  wall <- system.time(fits <- parallel::mclapply(1:4, one, mc.cores = 2, mc.preschedule = FALSE))[["elapsed"]]
  failed <- Filter(function(f) !inherits(f, "stanfit"), fits)
  if (length(failed) > 0) stop(sprintf("%d chains failed: %s", length(failed), paste(unlist(lapply(failed, as.character)), collapse = "; ")))
  clock <- t(sapply(fits, function(f) as.numeric(get_elapsed_time(f))))
  steps <- lapply(fits, function(f) get_sampler_params(f, inc_warmup = TRUE)[[1]])
  leaps <- sapply(steps, function(s) sum(s[, "n_leapfrog__"]))
  diverged <- sum(sapply(steps, function(s) sum(s[-seq_len(warmup), "divergent__"])))
  deep <- sum(sapply(steps, function(s) sum(s[-seq_len(warmup), "treedepth__"] >= 10)))
  kept <- do.call(rbind, lapply(fits, function(f) extract(f, pars = "u", permuted = FALSE, inc_warmup = FALSE)[, 1, ]))
  write_numbers(file.path(folder, sprintf("stan-%s-%d.bin", metric, seed)), kept)
  cat(sprintf("seed\t%d\t%.4f\t%.4f\t%.0f\t%d\t%d\t%.4f\n", seed, on_two_cores(rowSums(clock)), wall, sum(leaps), diverged, deep, sum(clock)))
}

switch(arguments[1],
  compile = compile(arguments[2]),
  points = points(arguments[2], arguments[3], arguments[4], arguments[5]),
  sample = sample_seed(arguments[2], arguments[3], as.integer(arguments[4]), as.integer(arguments[5]), as.integer(arguments[6]),
    as.numeric(arguments[7]), arguments[8]),
  stop("unknown step"))
