namespace Coolproof.Sampling.Tests.Classical;

/// <summary>
/// Readings of published experiments, balanced and in standard order, so that the factors follow from the position. Expected figures in
/// the tests were computed with lme4 1.1-31 and R 4.2.2 (bobyqa, rhoend 1e-10).
/// </summary>
static class PublishedExperiments
{
    /// <summary>
    /// Yield of dyestuff, 6 batches × 5:
    /// O. L. Davies, Statistical Methods in Research and Production, 3rd ed. 1957, table 6.1.
    /// </summary>
    public static readonly double[] Dyestuff =
    [
        1545, 1440, 1440, 1520, 1580, 1540, 1555, 1490, 1560, 1495, 1595, 1550, 1605, 1510, 1560, 1445, 1440, 1595, 1465, 1545,
        1595, 1630, 1515, 1635, 1625, 1520, 1455, 1450, 1480, 1445,
    ];

    /// <summary>
    /// Constructed yields without variance between batches, 6 × 5:
    /// G. E. P. Box and G. C. Tiao, Bayesian Inference in Statistical Analysis, 1973, table 5.1.4.
    /// </summary>
    public static readonly double[] Dyestuff2 =
    [
        7.298, 3.846, 2.434, 9.566, 7.99, 5.22, 6.556, 0.608, 11.788, -0.892, 0.11, 10.386, 13.434, 5.51, 8.166, 2.212, 4.852,
        7.092, 9.288, 4.98, 0.282, 9.014, 4.458, 9.446, 7.198, 1.722, 4.782, 8.106, 0.758, 3.758,
    ];

    /// <summary>
    /// Growth inhibition in mm, 24 plates × 6 samples:
    /// O. L. Davies and P. L. Goldsmith, Statistical Methods in Research and Production, 4th ed. 1972, section 6.6.
    /// </summary>
    public static readonly double[] Penicillin =
    [
        27, 23, 26, 23, 23, 21, 27, 23, 26, 23, 23, 21, 25, 21, 25, 24, 24, 20, 26, 23, 25, 23, 23, 20, 25, 22, 26, 22, 23, 20,
        24, 22, 25, 23, 22, 19, 24, 20, 23, 21, 22, 19, 26, 22, 26, 24, 24, 21, 24, 21, 24, 22, 22, 20, 24, 21, 24, 23, 22, 19,
        26, 23, 26, 24, 24, 21, 25, 22, 26, 24, 24, 20, 26, 24, 26, 24, 25, 22, 26, 23, 26, 23, 23, 20, 26, 23, 25, 24, 24, 22,
        25, 22, 25, 23, 23, 20, 25, 21, 24, 23, 23, 20, 25, 22, 24, 23, 23, 19, 24, 21, 23, 21, 21, 19, 26, 23, 26, 24, 24, 21,
        25, 21, 24, 22, 22, 18, 25, 22, 25, 22, 22, 20, 24, 21, 24, 22, 24, 19, 24, 21, 24, 22, 21, 18,
    ];

    /// <summary>
    /// Strength of paste, 10 batches × 3 casks × 2:
    /// Davies and Goldsmith 1972, section 6.5.
    /// </summary>
    public static readonly double[] Pastes =
    [
        62.8, 62.6, 60.1, 62.3, 62.7, 63.1, 60, 61.4, 57.5, 56.9, 61.1, 58.9, 58.7, 57.5, 63.9, 63.1, 65.4, 63.7, 57.1, 56.4,
        56.9, 58.6, 64.7, 64.5, 55.1, 55.1, 54.7, 54.2, 58.8, 57.5, 63.4, 64.9, 59.3, 58.1, 60.5, 60, 62.5, 62.6, 61, 58.7, 56.9,
        57.7, 59.2, 59.4, 65.2, 66, 64.8, 64.1, 54.8, 54.8, 64, 64, 57.7, 56.8, 58.3, 59.3, 59.2, 59.2, 58.9, 56.6,
    ];

    /// <summary>
    /// Productivity score, 3 machines × 6 workers × 3:
    /// R. A. McLean, W. L. Sanders, W. W. Stroup, American Statistician 45 (1991) 54-64 (table 23.1 of Milliken and Johnson 1992).
    /// </summary>
    public static readonly double[] Machines =
    [
        52, 52.8, 53.1, 51.8, 52.8, 53.1, 60, 60.2, 58.4, 51.1, 52.3, 50.3, 50.9, 51.8, 51.4, 46.4, 44.8, 49.2, 62.1, 62.6, 64,
        59.7, 60, 59, 68.6, 65.8, 69.7, 63.2, 62.8, 62.2, 64.8, 65, 65.4, 43.7, 44.2, 43, 67.5, 67.2, 66.9, 61.5, 61.7, 62.3,
        70.8, 70.6, 71, 64.1, 66.2, 64, 72.1, 72, 71.1, 62, 61.4, 60.5,
    ];

    /// <summary>
    /// Reaction time in ms, 18 subjects × days 0 to 9 of sleep restriction:
    /// G. Belenky and others, Journal of Sleep Research 12 (2003) 1-12.
    /// </summary>
    public static readonly double[] Sleep =
    [
        249.56, 258.7047, 250.8006, 321.4398, 356.8519, 414.6901, 382.2038, 290.1486, 430.5853, 466.3535, 222.7339, 205.2658,
        202.9778, 204.707, 207.7161, 215.9618, 213.6303, 217.7272, 224.2957, 237.3142, 199.0539, 194.3322, 234.32, 232.8416,
        229.3074, 220.4579, 235.4208, 255.7511, 261.0125, 247.5153, 321.5426, 300.4002, 283.8565, 285.133, 285.7973, 297.5855,
        280.2396, 318.2613, 305.3495, 354.0487, 287.6079, 285, 301.8206, 320.1153, 316.2773, 293.3187, 290.075, 334.8177,
        293.7469, 371.5811, 234.8606, 242.8118, 272.9613, 309.7688, 317.4629, 309.9976, 454.1619, 346.8311, 330.3003, 253.8644,
        283.8424, 289.555, 276.7693, 299.8097, 297.171, 338.1665, 332.0265, 348.8399, 333.36, 362.0428, 265.4731, 276.2012,
        243.3647, 254.6723, 279.0244, 284.1912, 305.5248, 331.5229, 335.7469, 377.299, 241.6083, 273.9472, 254.4907, 270.8021,
        251.4519, 254.6362, 245.4523, 235.311, 235.7541, 237.2466, 312.3666, 313.8058, 291.6112, 346.1222, 365.7324, 391.8385,
        404.2601, 416.6923, 455.8643, 458.9167, 236.1032, 230.3167, 238.9256, 254.922, 250.7103, 269.7744, 281.5648, 308.102,
        336.2806, 351.6451, 256.2968, 243.4543, 256.2046, 255.5271, 268.9165, 329.7247, 379.4445, 362.9184, 394.4872, 389.0527,
        250.5265, 300.0576, 269.8939, 280.5891, 271.8274, 304.6336, 287.7466, 266.5955, 321.5418, 347.5655, 221.6771, 298.1939,
        326.8785, 346.8555, 348.7402, 352.8287, 354.4266, 360.4326, 375.6406, 388.5417, 271.9235, 268.4369, 257.2424, 277.6566,
        314.8222, 317.2135, 298.1353, 348.1229, 340.28, 366.5131, 225.264, 234.5235, 238.9008, 240.473, 267.5373, 344.1937,
        281.1481, 347.5855, 365.163, 372.2288, 269.8804, 272.4428, 277.8989, 281.7895, 279.1705, 284.512, 259.2658, 304.6306,
        350.7807, 369.4692, 269.4117, 273.474, 297.5968, 310.6316, 287.1726, 329.6076, 334.4818, 343.2199, 369.1417, 364.1236,
    ];

    /// <summary>
    /// Breaks per loom, wool A and B × tension L, M, H × 9:
    /// L. H. C. Tippett, Technological Applications of Statistics, 1950, p. 106.
    /// </summary>
    public static readonly double[] Warpbreaks =
    [
        26, 30, 54, 25, 70, 52, 51, 26, 67, 18, 21, 29, 17, 12, 18, 35, 30, 36, 36, 21, 24, 18, 10, 43, 28, 15, 26, 27, 14, 29,
        19, 29, 31, 41, 20, 44, 42, 26, 19, 16, 39, 28, 21, 39, 29, 20, 21, 24, 17, 13, 15, 15, 16, 28,
    ];

    /// <summary>
    /// Decrease of syrup, 8 × 8 Latin square, column by column:
    /// D. J. Finney, Probit Analysis, 1947.
    /// </summary>
    public static readonly double[] OrchardSprays =
    [
        57, 95, 8, 69, 92, 90, 15, 2, 84, 6, 127, 36, 51, 2, 69, 71, 87, 72, 5, 39, 22, 16, 72, 4, 130, 4, 114, 9, 20, 24, 10, 51,
        43, 28, 60, 5, 17, 7, 81, 71, 12, 29, 44, 77, 4, 27, 47, 76, 8, 72, 13, 57, 4, 81, 20, 61, 80, 114, 39, 14, 86, 55, 3, 19,
    ];

    /// <summary>Spray of each reading of <see cref="OrchardSprays"/>.</summary>
    public const string OrchardSpray = "DEBHGFCACBHDEAFGFHAEDCGBHAECFGBDEDGACBHFACFGBDEHBGCFAHDEGFDBHEAC";

    /// <summary>
    /// Constructed, 8 subjects × 4 periods of a Williams design:
    /// treatment effects 0, −2, −3.5, −1.2, carry-over 0, −0.6, −0.9, −0.3, small residuals.
    /// </summary>
    public static readonly double[] Williams =
    [
        61.1, 59.1, 60, 58.8, 56.4, 55.5, 58.8, 59.1, 57.4, 58.4, 58.5, 61.3, 60.8, 62, 59.6, 60.2, 59, 58.4, 58.5, 56.7, 56.8,
        55.1, 58, 59.2, 57.4, 59.1, 59.8, 61.8, 57.9, 59.6, 56.2, 57.7,
    ];

    /// <summary>Treatment of each reading of <see cref="Williams"/>; in the period before, the one to its left.</summary>
    public const string WilliamsTreatment = "12432314342141321243231434214132";
}
