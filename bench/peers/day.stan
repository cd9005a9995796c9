// The joint model of plain test days (clock times and delays noted, readings of the can only) in the program's own unconstrained parameters u, with the
// same priors, Jacobians and coordinates. Written for speed: closed-form two-node steps, everything that several readings of a run share computed once.
// Indices count from 1; 0 means none. Old array syntax, for Stan 2.21.
functions {
  // A half-normal quantity over its scale, as an increasing function of a standard normal one.
  real half_normal(real u) {
    return u > 0 ? -inv_Phi(0.5 * Phi(-u)) : inv_Phi(0.5 + 0.5 * Phi(u));
  }
  // (e^(lambda t) - e^(-nu t))/(lambda + nu), also where lambda is near -nu.
  real response(real rate, real e_lambda, real e_nu, real t) {
    real z = rate * t;
    if (fabs(z) < 0.05)
      return e_nu * t * (1 + z / 2 * (1 + z / 3 * (1 + z / 4 * (1 + z / 5 * (1 + z / 6 * (1 + z / 7 * (1 + z / 8)))))));
    return (e_lambda - e_nu) / rate;
  }
  // Mean and half distance of the eigenvalues of [[a11, a12], [a21, a22]].
  vector eigenvalues(real a11, real a12, real a21, real a22) {
    real d = 0.5 * (a11 - a22);
    return [0.5 * (a11 + a22), sqrt(d * d + a12 * a21)]';
  }
  // c0, c1 with e^(At) = c0 + c1 A, and d0, d1 with the response to a source decaying at nu: (d0 + d1 A) b.
  vector interval(vector eigen, real t, real nu, real e_nu) {
    real slow = eigen[1] + eigen[2];
    real fast = eigen[1] - eigen[2];
    real h = 0.5 / eigen[2];
    real e_plus = exp(slow * t);
    real e_minus = exp(fast * t);
    real f_plus = response(slow + nu, e_plus, e_nu, t);
    real f_minus = response(fast + nu, e_minus, e_nu, t);
    real c1 = (e_plus - e_minus) * h;
    real d1 = (f_plus - f_minus) * h;
    return [e_plus - slow * c1, c1, f_plus - slow * d1, d1]';
  }
  // Log rise of a typical run's can for one K/s of heat; g is its can to air over can capacity while driving.
  real log_rise(real kappa, real back, real nu, real taken, real copper, real g, real roll_ratio, real stop_ratio, real drive_s, real roll_s, real delay_s,
                real warm, real hot, real feedback) {
    real drive11 = feedback - kappa;
    real drive22 = -back - g;
    real roll22 = -back - g * roll_ratio;
    real stop22 = -back - g * stop_ratio;
    real e_roll = exp(-nu * roll_s);
    vector[4] driven = interval(eigenvalues(drive11, kappa, back, drive22), drive_s, 0, 1);
    vector[4] rolled = interval(eigenvalues(-kappa, kappa, back, roll22), roll_s, nu, e_roll);
    vector[4] waited = interval(eigenvalues(-kappa, kappa, back, stop22), delay_s, nu, exp(-nu * delay_s));
    real heat = 1 + copper * (warm - 1);
    real w = copper * hot;
    real go = -taken * copper * warm;
    real end1 = (driven[1] + driven[2] * drive11) * go + heat * (driven[3] + driven[4] * drive11);
    real end2 = back * (driven[2] * go + heat * driven[4]);
    real halt1 = rolled[1] * end1 + rolled[2] * kappa * (end2 - end1) + w * (rolled[3] - rolled[4] * kappa);
    real halt2 = rolled[1] * end2 + rolled[2] * (back * end1 + roll22 * end2) + w * rolled[4] * back;
    return log(waited[1] * halt2 + waited[2] * (back * halt1 + stop22 * halt2) + w * e_roll * waited[4] * back);
  }
  // Log density of a normal plus an exponential quantity, also where erfc underflows.
  real log_modified(real x, real rate, real sigma) {
    real z = x / sigma;
    real v = (sigma * rate - z) * 0.70710678118654752;
    if (v < 20)
      return exp_mod_normal_lpdf(x | 0, sigma, rate);
    else {
      real w = 1 / (2 * square(v));
      return log(0.5 * rate) - 0.5 * square(z) + log((1 - w * (1 - 3 * w * (1 - 5 * w * (1 - 7 * w * (1 - 9 * w))))) / v) - 0.57236494292470009;
    }
  }
}
data {
  int dimension;
  int groups;
  int members;
  int units;
  int options;
  int days;
  int ratios;
  int guns;
  int gains;
  int runs;
  int readings;
  int levelled;
  int roll_in_ratio;
  real copper_shape;
  real alpha;
  real typical_rise;
  real day_conductance_sd;
  real trend_sd;
  real first_run_sd;
  real run_heat_scale;
  real run_heat_floor;
  real offset_sd;
  real scatter_scale;
  real scatter_floor;
  real wide_weight;
  real wide_factor;
  int unit[units];
  // Normal priors by mean and sd; the roll-in's gamma by shape and mean.
  real core_over_can[2];
  real core_to_can[2];
  real winding_share[2];
  real slot_resistance[2];
  real mean_heat[2];
  real mean_conductance[2];
  real resting[2];
  real roll_in_gamma[2];
  real aim_loss[2];
  int group_spread[groups];
  real group_scale[groups];
  int group_size[groups];
  real group_centred[groups];
  real group_floor[groups];
  int group_informed[groups];
  int member[members];
  // What the evidence says of each member of an informed group: coordinates only. Its precision follows the spread of heat where a run's heat stands between.
  real evidence_information[members];
  real evidence_asks[members];
  real evidence_other_variance[members];
  real evidence_charge_precision[members];
  real evidence_heat_share[members];
  // What else a member's asked-for deviation goes with: a parameter, or where follow_member isn't 0 a deviation before it.
  int follows;
  int follow_last[members];
  int follow_parameter[follows];
  int follow_member[follows];
  real follow_slope[follows];
  // What all readings say of mean heat: coordinates only. A typical run, and the log rise of its can for one K/s of heat; 0: mean heat plainly.
  int mean_levelled;
  real mean_drive_s;
  real mean_roll_s;
  real mean_delay_s;
  real mean_warm;
  real mean_copper_heat;
  real mean_log_rise;
  vector[options] mean_options;
  vector[ratios] mean_ratios;
  // Places among the members.
  int option_member[options];
  int day_member[days];
  int day_conductance[days];
  int day_air[days];
  int day_trend[days];
  real day_air_sd[days];
  vector[days] day_share;
  real ratio_mean[ratios];
  int ratio_common[ratios];
  real ratio_common_sd[ratios];
  int ratio_own[ratios];
  real ratio_own_sd[ratios];
  int gun_offset[guns];
  int gun_aim[guns];
  int gun_scatter[guns];
  int gain_parameter[gains];
  real gain_mean[gains];
  real gain_sd[gains];
  real read_c[readings];
  real read_delay[readings];
  int read_gun[readings];
  int read_gain[readings];
  real read_factor[readings];
  int run_day[runs];
  int run_option[runs];
  int run_ratio[runs];
  int run_mounting[runs];
  int run_heat_member[runs];
  int run_heat[runs];
  int run_air[runs];
  int run_rest[runs];
  int run_start_can[runs];
  int run_start_core[runs];
  int run_roll_in[runs];
  real run_roll_in_s[runs];
  real run_rest_s[runs];
  real run_drive_s[runs];
  real run_log_driven[runs];
  real run_air_c[runs];
  real run_air_sd[runs];
  real run_heat_factor[runs];
  real run_place[runs];
  int run_first[runs];
  int run_last[runs];
  // What each run's readings say of its heat: coordinates only. A rise of 0: none.
  real level_read_c[runs];
  real level_rise[runs];
  int level_readings[runs];
  real level_other[runs];
  int level_gun[runs];
  int level_gain[runs];
}
parameters {
  vector[dimension] u;
}
model {
  real rho = exp(core_over_can[1] + core_over_can[2] * u[1]);
  real kappa = exp(core_to_can[1] + core_to_can[2] * u[2]);
  real share = exp(winding_share[1] + winding_share[2] * u[3]);
  real slot = exp(slot_resistance[1] + slot_resistance[2] * u[4]);
  real per_slot = 1 / slot;
  real nu = per_slot / share;
  real copper = inv_logit(u[5]);
  real log_heat;
  real day_mean;
  real log_conductance = mean_conductance[1] + mean_conductance[2] * u[7];
  real back = kappa * rho;
  real taken = share * slot;
  vector[members] deviations;
  vector[ratios] log_ratio;
  vector[ratios] ratio;
  real gun_zero[guns];
  real aim[guns];
  real scatter[guns];
  real gain[gains];
  real option_log_g[options];
  real day_log_p[days];
  real day_air_off[days];
  real heat_variance = square(run_heat_scale) * (square(half_normal(u[11])) + square(run_heat_floor));
  real run_spread = sqrt(heat_variance);
  real shift = 0;
  real air_before = 0;
  real halt1 = 0;
  real halt2 = 0;
  real halt_excess = 0;
  int at = 1;

  target += -0.5 * dot_self(u[unit]);
  target += copper_shape * (log(copper) + log1m(copper));
  for (g in 1:groups) {
    real x = half_normal(u[group_spread[g]]);
    if (group_floor[g] > 0) x = sqrt(square(x) + square(group_floor[g]));
    if (group_informed[g] > 0) {
      // A deviation about what group and evidence expect together, in sds of both.
      real spread_squared = square(group_scale[g] * x);
      real half_precision = -0.5 / spread_squared;
      for (k in at:(at + group_size[g] - 1)) {
        real between = evidence_other_variance[k];
        real asks = evidence_asks[k];
        real portion;
        for (f in ((k == 1 ? 0 : follow_last[k - 1]) + 1):follow_last[k])
          asks += follow_slope[f] * (follow_member[f] > 0 ? deviations[follow_member[f]] : u[follow_parameter[f]]);
        if (evidence_charge_precision[k] > 0)
          between += evidence_heat_share[k] * heat_variance / (1 + heat_variance * evidence_charge_precision[k]);
        else if (evidence_heat_share[k] > 0)
          between += evidence_heat_share[k] * heat_variance;
        portion = between / (between + evidence_information[k] * spread_squared);
        deviations[k] = (1 - portion) * asks + sqrt(spread_squared * portion) * u[member[k]];
        target += half_precision * square(deviations[k]) + 0.5 * log(portion);
      }
    } else if (group_size[g] > 0) {
      real above = log(x);
      real w = group_centred[g];
      vector[group_size[g]] own = u[segment(member, at, group_size[g])];
      if (w == 0)
        target += -0.5 * dot_self(own);
      else
        target += -0.5 * dot_self(own) * exp(-2 * w * above) - group_size[g] * w * above;
      deviations[at:(at + group_size[g] - 1)] = group_scale[g] * exp((1 - w) * above) * own;
    }
    at += group_size[g];
  }
  for (i in 1:ratios) {
    log_ratio[i] = ratio_mean[i];
    if (ratio_common[i] > 0) log_ratio[i] += ratio_common_sd[i] * u[ratio_common[i]];
    if (ratio_own[i] > 0) log_ratio[i] += ratio_own_sd[i] * u[ratio_own[i]];
  }
  ratio = exp(log_ratio);
  for (i in 1:guns) {
    gun_zero[i] = offset_sd * u[gun_offset[i]];
    aim[i] = exp(aim_loss[1] + aim_loss[2] * u[gun_aim[i]]);
    scatter[i] = sqrt(square(scatter_scale * half_normal(u[gun_scatter[i]])) + square(scatter_floor));
  }
  for (i in 1:gains)
    gain[i] = exp(gain_mean[i] + gain_sd[i] * u[gain_parameter[i]]);
  // Mean heat is told from the mean of the days that were driven, and about what a typical run's rise asks for.
  day_mean = dot_product(day_share, deviations[day_member]);
  if (mean_levelled > 0)
    shift = mean_log_rise - log_rise(kappa, back, nu, taken, copper, rho * exp(log_conductance + dot_product(mean_options, deviations[option_member])),
      ratio[roll_in_ratio], exp(dot_product(mean_ratios, log_ratio)), mean_drive_s, mean_roll_s, mean_delay_s, mean_warm,
      mean_warm + alpha * typical_rise, alpha * mean_copper_heat);
  target += -0.5 * square(u[6] + (shift - day_mean) / mean_heat[2]);
  log_heat = mean_heat[1] + mean_heat[2] * u[6] + shift - day_mean;
  for (i in 1:options)
    option_log_g[i] = log_conductance + deviations[option_member[i]];
  for (i in 1:days) {
    day_log_p[i] = log_heat + deviations[day_member[i]];
    day_air_off[i] = day_air_sd[i] * u[day_air[i]];
  }

  for (r in 1:runs) {
    int day = run_day[r];
    int first = run_first[r];
    int last = run_last[r];
    int count = last - first + 1;
    vector[4] read_step[count];
    real air = run_air_c[r] + day_air_off[day] + run_air_sd[r] * u[run_air[r]];
    real warm = 1 + alpha * (air - 25);
    real gamma = rho * exp(option_log_g[run_option[r]] + deviations[run_mounting[r]] + day_conductance_sd * u[day_conductance[day]]);
    real mean_log_p = day_log_p[day] + trend_sd * run_place[r] * u[day_trend[day]] + run_log_driven[r];
    real plain = copper * exp(mean_log_p);
    real over = alpha * slot * plain;
    real more = 1 + over + square(over);
    real mean_copper = plain * more;
    real start1;
    real start2;
    real deviation;
    real p;
    real run_copper;
    real drive;
    real go1;
    real end1;
    real end2;
    real w;
    real roll_s = run_roll_in_s[r];
    real drive11 = alpha * mean_copper - kappa;
    real drive22 = -back - gamma;
    real roll22 = -back - gamma * ratio[roll_in_ratio];
    real stop22 = -back - gamma * ratio[run_ratio[r]];
    vector[4] driven = interval(eigenvalues(drive11, kappa, back, drive22), run_drive_s[r], 0, 1);
    vector[4] rolled;
    real e_rolled;
    vector[2] stop_eigen = eigenvalues(-kappa, kappa, back, stop22);

    if (run_roll_in[r] > 0) {
      real v = u[run_roll_in[r]];
      roll_s = exp(v);
      target += roll_in_gamma[1] * v - roll_s * (roll_in_gamma[1] / roll_in_gamma[2]);
    }
    e_rolled = exp(-nu * roll_s);
    rolled = interval(eigenvalues(-kappa, kappa, back, roll22), roll_s, nu, e_rolled);
    for (i in 1:count) {
      real delay = read_delay[first + i - 1];
      read_step[i] = interval(stop_eigen, delay, nu, exp(-nu * delay));
    }

    if (run_rest[r] > 0) {
      real rest22 = -back - gamma * exp(resting[1] + resting[2] * u[run_rest[r]]);
      vector[4] rested = interval(eigenvalues(-kappa, kappa, back, rest22), run_rest_s[r], nu, exp(-nu * run_rest_s[r]));
      real x1 = halt1 + (air_before - air);
      real x2 = halt2 + (air_before - air);
      w = halt_excess * per_slot;
      start1 = rested[1] * x1 + rested[2] * kappa * (x2 - x1) + w * (rested[3] - rested[4] * kappa);
      start2 = rested[1] * x2 + rested[2] * (back * x1 + rest22 * x2) + w * rested[4] * back;
    } else {
      start2 = first_run_sd * u[run_start_can[r]];
      start1 = first_run_sd * u[run_start_core[r]];
    }

    if (level_rise[r] > 0) {
      // The can at the mean reading is rest + per_heat * heat, but for the feedback on the winding's share of the start; copper as at mean heat.
      vector[4] mean_step = read_step[1];
      real unit_copper = copper * more;
      real heat = 1 - copper + unit_copper * warm;
      real unit_w = unit_copper * (warm + alpha * typical_rise);
      real unit_go1 = -taken * unit_copper * warm;
      real rest_end1 = driven[1] * start1 + driven[2] * (drive11 * start1 + kappa * start2);
      real rest_end2 = driven[1] * start2 + driven[2] * (back * start1 + drive22 * start2);
      real unit_end1 = (driven[1] + driven[2] * drive11) * unit_go1 + heat * (driven[3] + driven[4] * drive11);
      real unit_end2 = back * (driven[2] * unit_go1 + heat * driven[4]);
      real rest_halt1 = rolled[1] * rest_end1 + rolled[2] * kappa * (rest_end2 - rest_end1);
      real rest_halt2 = rolled[1] * rest_end2 + rolled[2] * (back * rest_end1 + roll22 * rest_end2);
      real unit_halt1 = rolled[1] * unit_end1 + rolled[2] * kappa * (unit_end2 - unit_end1) + unit_w * (rolled[3] - rolled[4] * kappa);
      real unit_halt2 = rolled[1] * unit_end2 + rolled[2] * (back * unit_end1 + roll22 * unit_end2) + unit_w * rolled[4] * back;
      real rest_can;
      real per_heat;
      real asked;
      real by_level;
      real spread = run_heat_factor[r] * run_spread;
      real prior_precision = 1 / square(spread);
      real level_precision = square(level_rise[r]) / (square(scatter[level_gun[r]]) / level_readings[r] + level_other[r]);
      real own_sd = inv_sqrt(prior_precision + level_precision);
      for (i in 2:count)
        mean_step += read_step[i];
      mean_step *= 1.0 / count;
      rest_can = mean_step[1] * rest_halt2 + mean_step[2] * (back * rest_halt1 + stop22 * rest_halt2);
      per_heat = mean_step[1] * unit_halt2 + mean_step[2] * (back * unit_halt1 + stop22 * unit_halt2) + unit_w * e_rolled * mean_step[4] * back;
      asked = ((level_read_c[r] - gun_zero[level_gun[r]] - air) / gain[level_gain[r]] - rest_can) / (per_heat * exp(mean_log_p));
      by_level = asked > 0.3 ? log(asked) : log(0.3) + asked / 0.3 - 1;
      deviation = level_precision * by_level * square(own_sd) + own_sd * u[run_heat[r]];
      target += -0.5 * square(deviation) * prior_precision + log(own_sd / spread);
    } else
      deviation = run_heat_factor[r] * deviations[run_heat_member[r]];

    p = exp(mean_log_p + deviation);
    plain = copper * p;
    over = alpha * slot * plain;
    run_copper = plain * (1 + over + square(over));
    drive = p - plain + run_copper * warm + alpha * (run_copper - mean_copper) * typical_rise;
    go1 = start1 - taken * run_copper * (warm + alpha * start1);
    end1 = driven[1] * go1 + driven[2] * (drive11 * go1 + kappa * start2) + drive * (driven[3] + driven[4] * drive11);
    end2 = driven[1] * start2 + driven[2] * (back * go1 + drive22 * start2) + drive * driven[4] * back;
    w = run_copper * (warm + alpha * end1);
    halt1 = rolled[1] * end1 + rolled[2] * kappa * (end2 - end1) + w * (rolled[3] - rolled[4] * kappa);
    halt2 = rolled[1] * end2 + rolled[2] * (back * end1 + roll22 * end2) + w * rolled[4] * back;
    halt_excess = slot * w * e_rolled;
    air_before = air;

    {
      real along = back * halt1 + stop22 * halt2;
      real source = halt_excess * per_slot * back;
      for (i in 1:count) {
        int k = first + i - 1;
        int gun = read_gun[k];
        real can = read_step[i][1] * halt2 + read_step[i][2] * along + read_step[i][4] * source;
        real rate = 1 / (aim[gun] * read_factor[k] * sqrt(square(can) + 1));
        real short_by = air + gain[read_gain[k]] * can + gun_zero[gun] - read_c[k];
        target += log_mix(wide_weight, log_modified(short_by, rate, wide_factor * scatter[gun]), log_modified(short_by, rate, scatter[gun]));
      }
    }
  }
}
