namespace CareRecords.Statistics;

/// <summary>How the variance between studies, τ², is estimated.</summary>
public enum HeterogeneityMethod
{
    /// <summary>Restricted maximum likelihood.</summary>
    RestrictedMaximumLikelihood,

    /// <summary>DerSimonian and Laird's moments (1986, Control Clin Trials 7:177-188).</summary>
    DerSimonianLaird,

    /// <summary>Paule and Mandel's (1982): τ² at which Q equals its degrees of freedom; the same as empirical Bayes.</summary>
    PauleMandel,

    /// <summary>Maximum likelihood; too small for few studies.</summary>
    MaximumLikelihood,

    /// <summary>Hedges' unweighted moments.</summary>
    Hedges,

    /// <summary>Sidik and Jonkman's two-step estimate (2005, J R Stat Soc C 54:367-384).</summary>
    SidikJonkman,

    /// <summary>None: one common effect.</summary>
    CommonEffect,
}
